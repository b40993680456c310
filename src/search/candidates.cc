// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/candidates.h"

#include <algorithm>

namespace insetbook {
namespace {

// Counting so many takes a few milliseconds; a worse way in takes a hundred.
constexpr std::int64_t count_at_most = 100'001;

// Sorts by sample; of several rows of one sample the nearest stays.
void keep_nearest_of_each(std::vector<Candidate>& found) {
  std::sort(found.begin(), found.end(), [](const Candidate& a, const Candidate& b) {
    return a.sample != b.sample ? a.sample < b.sample : a.distance < b.distance;
  });
  const auto last = std::unique(found.begin(), found.end(),
                                [](const Candidate& a, const Candidate& b) { return a.sample == b.sample; });
  found.erase(last, found.end());
}

}  // namespace

Structure::Structure(const Book& book, const Node& all, const Relaxed& relaxed, Conditions::TextIds text_ids)
    : book_(book), all_(all), relaxed_(relaxed), text_ids_(std::move(text_ids)) {
  const Conditions conditions(book_, relaxed_, "c.id", nullptr);
  for (const Node& child : all_.children) {
    if (!conditions.ranks(child)) continue;
    ranked_.push_back(&child);
    exact_.push_back(conditions.exact(child));
  }
  ranks_ = !ranked_.empty();
  telling_apart_left_ = too_much_for_sql(all_);
}

void Structure::choose() {
  if (chosen_) return;
  path_ = choose_path(all_, book_, relaxed_, count_at_most);
  chosen_ = true;
}

std::int64_t Structure::rows(std::int64_t most) {
  choose();
  if (!path_) return most;
  if (path_->path.rows < 0) {
    std::int64_t rows = 0;
    for (const Seek& seek : path_->path.seeks) {
      Sql sql("SELECT COUNT(*) FROM (SELECT 1 ");
      sql << counted_rows(seek) << " LIMIT ";
      sql.value(most) << ")";
      Statement& statement = bound(book_, sql);
      if (statement.step()) rows += statement.integer(0);
      statement.reset();
    }
    path_->path.rows = rows;
  }
  return std::min(most, path_->path.rows);
}

// ", <distance>" for each child that counts; the one that drives has its own in c.d.
Sql Structure::selected(Conditions& conditions, const Node* driven) const {
  Sql sql;
  for (const Node* child : ranked_) {
    sql << ", ";
    if (child == driven) {
      sql << "c.d";
    } else {
      sql << conditions.distance_of_sample(*child);
    }
  }
  return sql;
}

// The piece whose rows the way in walks, where walking them settles the piece: one is wanted, and nothing
// within it speaks of the sample's own columns.
const Node* Structure::driven_piece() const {
  const Node* piece = path_->path.piece;
  if (!piece || piece != path_->child || slot_of(*piece).wanted != 1) return nullptr;
  Conditions within(book_, relaxed_, "e.sample_id", text_ids_);
  static_cast<void>(within.of_piece(*piece));
  return within.speaks_of_sample() ? nullptr : piece;
}

bool Structure::rows_are_all() {
  choose();
  return path_ && all_.children.size() == 1 && (path_->path.met == path_->child || driven_piece() != nullptr);
}

Sql Structure::find_statement() {
  choose();
  Conditions conditions(book_, relaxed_, "c.id", text_ids_);
  Sql sql("SELECT c.id");
  if (!path_) {
    sql << selected(conditions, nullptr) << " FROM sample c";
    const Sql where = conditions.of_children(all_, nullptr);
    if (conditions.speaks_of_sample()) sql << " CROSS JOIN sample s ON s.id = c.id";
    return sql << " WHERE " << where;
  }
  const Node* driven = driven_piece();
  sql << selected(conditions, driven) << " FROM (";
  bool first = true;
  for (const Seek& seek : path_->path.seeks) {
    if (!first) sql << " UNION ALL ";
    first = false;
    sql << "SELECT " << seek.sample_column << " AS id, ";
    sql << (driven && conditions.ranks(*driven) ? conditions.distance_of_piece(*driven) : Sql("0"))
        << " AS d " << seek.from;
    if (driven) {
      Conditions within(book_, relaxed_, "e.sample_id", text_ids_);
      sql << " AND " << within.of_piece(*driven, path_->path.met);
    }
  }
  sql << ") c";
  // What the walk meets by itself is not asked again.
  const Sql where = conditions.of_children(all_, path_->path.met == path_->child ? path_->child : driven);
  if (conditions.speaks_of_sample()) sql << " CROSS JOIN sample s ON s.id = c.id";
  return sql << " WHERE " << where;
}

Candidate Structure::read(const Statement& row) const {
  Candidate candidate;
  candidate.sample = row.integer(0);
  for (std::size_t i = 0; i < exact_.size(); ++i) {
    const std::int64_t distance = row.integer(static_cast<int>(i) + 1);
    candidate.distance += distance;
    candidate.beyond += std::max<std::int64_t>(0, distance - exact_[i]);
  }
  return candidate;
}

std::vector<Candidate> Structure::find(std::size_t most) {
  std::vector<Candidate> found;
  bool in_order = true;  // as most indexes give them
  Statement& statement = bound(book_, find_statement());
  while (statement.step()) {
    const Candidate candidate = read(statement);
    if (!found.empty() && found.back().sample == candidate.sample) {
      if (candidate.distance < found.back().distance) found.back() = candidate;
      continue;
    }
    if (found.size() >= most) {
      if (!in_order) keep_nearest_of_each(found);
      in_order = true;
      if (found.size() >= most) break;
    }
    in_order = in_order && (found.empty() || found.back().sample < candidate.sample);
    found.push_back(candidate);
  }
  statement.reset();
  if (!in_order) keep_nearest_of_each(found);
  return found;
}

std::vector<Candidate> Structure::check(const std::vector<Candidate>& samples) {
  Conditions conditions(book_, relaxed_, "c.id", text_ids_);
  Sql sql("SELECT c.id");
  sql << selected(conditions, nullptr) << " FROM sample c";
  const Sql where = conditions.of_children(all_, nullptr);
  if (conditions.speaks_of_sample()) sql << " CROSS JOIN sample s ON s.id = c.id";
  sql << " WHERE " << where << " AND c.id = ";
  sql.value(std::int64_t{0});
  Statement& statement = bound(book_, sql);
  const int last = static_cast<int>(sql.values.size());
  std::vector<Candidate> met;
  for (const Candidate& each : samples) {
    statement.reset();
    statement.bind(last, each.sample);
    if (!statement.step()) continue;
    met.push_back(read(statement));
    met.back().weight = each.weight;
    met.back().alike = each.alike;
  }
  statement.reset();
  return met;
}

std::vector<Candidate> Structure::first(std::string_view from_sample, std::string_view order_by,
                                        std::size_t limit) {
  Conditions conditions(book_, relaxed_, "s.id", text_ids_);
  Sql sql("SELECT s.id");
  sql << selected(conditions, nullptr) << " FROM " << from_sample << " WHERE "
      << conditions.of_children(all_, nullptr) << " ORDER BY " << order_by << " LIMIT ";
  sql.value(static_cast<std::int64_t>(limit));
  Statement& statement = bound(book_, sql);
  std::vector<Candidate> found;
  while (statement.step()) found.push_back(read(statement));
  statement.reset();
  return found;
}

std::string Structure::explain() {
  choose();
  std::string said = "way in: " + (path_ ? path_->path.name : std::string("every sample"));
  if (path_ && path_->path.rows >= 0) said += ", " + std::to_string(path_->path.rows) + " rows";
  return said + "\nstatement: " + written_out(find_statement()) + "\n";
}

}  // namespace insetbook
