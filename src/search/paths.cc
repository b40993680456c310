// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/paths.h"

#include <algorithm>
#include <optional>

#include "search/envelopes.h"
#include "search/glue.h"

namespace insetbook {
namespace {

using Kind = Node::Kind;

constexpr std::string_view of_element = "e.sample_id";
constexpr std::string_view of_mention = "m.sample_id";
constexpr std::string_view of_sample = "s.id";

// Lower comes first. From what singles out a few samples in any book to what half of them share.
enum Order {
  by_title,
  by_shape_and_width,
  by_width,
  by_die,
  by_supply,
  by_colour,
  by_closed,
  by_term,
  by_date,
  by_role,
  by_shape,
  by_any_size
};

template <class T>
const T* said(const Node& piece) {
  if (piece.kind == Kind::one) return std::get_if<T>(&piece.constraint.front().says);
  for (const Node& child : piece.children) {
    if (child.kind != Kind::one) continue;
    if (const auto* says = std::get_if<T>(&child.constraint.front().says)) return says;
  }
  return nullptr;
}

// A circle's or a square's two sides are one figure.
bool one_figure_shapes(const ShapeIs* shape) {
  return shape && std::all_of(shape->terms.begin(), shape->terms.end(),
                              [](const std::string& term) { return term == "circle" || term == "square"; });
}

// The widths that a piece must have one of; empty: any width may do.
std::vector<Band> widths(const SizeRule& rule, bool one_figure_shape) {
  if (rule.two_figures) {
    if (rule.first.low == rule.second.low && rule.first.high == rule.second.high) return {rule.first};
    return {rule.first, rule.second};
  }
  if (one_figure_shape) return {rule.first};
  if (rule.either_side || rule.placed) return {};
  return {rule.first};
}

// What the partial indexes leave out is said again in each seek: SQLite takes such an index only where that
// is plain, and an empty list of values makes it forget.
Sql element_from(std::string_view index) {
  Sql sql("FROM element e INDEXED BY ");
  return sql << index << " WHERE ";
}

// The shapes of which the piece must have one, "circle or square" among them; none where any will do.
std::optional<ShapeIs> shapes_of(const Node& piece) {
  if (const auto* shape = said<ShapeIs>(piece)) return *shape;
  for (const Node& child : piece.children) {
    if (child.kind != Kind::any || child.children.empty()) continue;
    ShapeIs together;
    const bool all = std::all_of(child.children.begin(), child.children.end(), [&](const Node& each) {
      const auto* shape = each.kind == Kind::one ? said<ShapeIs>(each) : nullptr;
      if (shape) together.terms.insert(together.terms.end(), shape->terms.begin(), shape->terms.end());
      return shape != nullptr;
    });
    if (all) return together;
  }
  return std::nullopt;
}

void shape_and_size_paths(const Node& piece, const Relaxed& relaxed, std::vector<Path>& out) {
  const std::optional<ShapeIs> shape = shapes_of(piece);
  const auto* size = said<SizeIs>(piece);
  if (!shape && !size) return;
  const std::vector<Band> bands =
      size ? widths(relaxed.rule(*size), one_figure_shapes(shape ? &*shape : nullptr)) : std::vector<Band>();
  Path path;
  path.piece = &piece;
  path.order =
      shape ? (bands.empty() ? by_shape : by_shape_and_width) : (bands.empty() ? by_any_size : by_width);
  path.name = std::string(shape ? "shape" : "size") + (shape && !bands.empty() ? " and width" : "");
  Sql base = element_from(shape ? "element_shape_size" : "element_size");
  if (shape) base << "e.shape", base.any_of(shape->terms);
  if (!shape && bands.empty()) base << "e.width_nm IS NOT NULL";
  if (bands.empty()) path.seeks.push_back({base, of_element});
  for (const Band& band : bands) {
    Sql seek = base;
    seek << (shape ? " AND " : "") << "e.width_nm BETWEEN ";
    seek.value(band.low) << " AND ";
    seek.value(band.high);
    path.seeks.push_back({std::move(seek), of_element});
  }
  out.push_back(std::move(path));
}

// Pieces of another role whose name says so.
Seek called_seek(const RoleIs& role) {
  std::string phrases;
  for (const std::string& label : role.called) phrases += (phrases.empty() ? "\"" : " OR \"") + label + "\"";
  Sql walk("FROM name_piece");
  Sql match(" WHERE name_piece MATCH ");
  match.value(phrases);
  Seek seek{walk, of_element};
  seek.counted << walk << match;
  seek.from << " CROSS JOIN element e ON e.id = name_piece.rowid" << match << " AND NOT +e.role";
  seek.from.any_of(role.terms);
  return seek;
}

void role_path(const Node& piece, std::vector<Path>& out) {
  const auto* role = said<RoleIs>(piece);
  if (!role) return;
  Sql seek = element_from("element_role");
  seek << "e.role <> '' AND e.role";
  seek.any_of(role->terms);
  Path path{"role", by_role, {{std::move(seek), of_element}}, &piece};
  if (!role->called.empty()) path.seeks.push_back(called_seek(*role));
  out.push_back(std::move(path));
}

void glue_path(const Node& piece, const Book& book, std::vector<Path>& out) {
  const auto* glue = said<GlueIs>(piece);
  if (!glue) return;
  Sql seek = element_from("element_glue");
  seek << "e.glue <> '' AND e.glue";
  seek.any_of(written_glues(book, *glue));
  out.push_back({"glue", by_role, {{std::move(seek), of_element}}, &piece});
}

void die_path(const Node& piece, const Book& book, std::vector<Path>& out) {
  const auto* die = said<DieIs>(piece);
  if (!die || die->any) return;
  const DieMeaning meaning = die_meaning(book, *die);
  Path path{"die", by_die, {}, &piece};
  if (die->lies_in) {
    path.name = "line it lies in";
    Sql seek = element_from("element_in_line");
    seek << "e.in_line_id IS NOT NULL AND e.in_line_id";
    path.seeks.push_back({seek.any_of(meaning.lines), of_element});
  } else {
    Sql seek = element_from("element_die");
    seek << "e.die_id IS NOT NULL AND e.die_id";
    path.seeks.push_back({seek.any_of(meaning.dies), of_element});
    if (!meaning.sets.empty()) {
      Sql of_set = element_from("element_set");
      of_set << "+e.die_id IS NULL AND e.set_id IS NOT NULL AND e.set_id";
      path.seeks.push_back({of_set.any_of(meaning.sets), of_element});
    }
  }
  out.push_back(std::move(path));
}

struct MentionIndex {
  std::string_view index, name;
  int order;
};

MentionIndex mention_index(const Says& says) {
  if (std::holds_alternative<ColourIs>(says)) return {"mention_colour", "colour", by_colour};
  if (std::holds_alternative<SupplyIs>(says)) return {"mention_supply", "supply", by_supply};
  return {"mention_term", "term", by_term};
}

Seek mention_seek(const Says& says, const Node* piece) {
  Sql walk("FROM mention m INDEXED BY ");
  walk << mention_index(says).index;
  Sql condition(" WHERE ");
  // No "IS NOT NULL" beside the list: SQLite would walk every term of the kind instead of those listed.
  condition << mention_terms(says, "");
  Seek seek{walk, piece ? of_element : of_mention};
  if (piece) {
    seek.from << " CROSS JOIN element e ON e.id = m.element_id";
    seek.counted << walk << condition;
  }
  seek.from << condition;
  return seek;
}

Path mention_path(const Node& one, const Node* piece, const Book& book) {
  const Says& says = one.constraint.front().says;
  const MentionIndex index = mention_index(says);
  Path path{std::string(index.name), index.order, {mention_seek(says, piece)}, piece};
  if (const auto* material = std::get_if<MaterialIs>(&says)) {
    const SupplyIs made_of{supplies_of_material(book, *material), ""};
    if (!made_of.supplies.empty()) path.seeks.push_back(mention_seek(made_of, piece));
  }
  path.met = &one;
  return path;
}

bool mention_of_piece(const Says& says) {
  return std::holds_alternative<TechniqueIs>(says) || std::holds_alternative<MaterialIs>(says) ||
         std::holds_alternative<ColourIs>(says) || std::holds_alternative<SupplyIs>(says);
}

std::vector<Path> paths_to_other(const Node& other, const Book& book, const Relaxed& relaxed);

std::vector<Path> paths_to_piece(const Node& piece, const Book& book, const Relaxed& relaxed) {
  std::vector<Path> out;
  shape_and_size_paths(piece, relaxed, out);
  role_path(piece, out);
  die_path(piece, book, out);
  glue_path(piece, book, out);
  for (const Node& child : piece.children) {
    if (child.kind == Kind::one && mention_of_piece(child.constraint.front().says))
      out.push_back(mention_path(child, &piece, book));
    if (child.kind == Kind::goes && !child.children.empty()) {
      for (Path& path : paths_to_other(child.children.front(), book, relaxed)) out.push_back(std::move(path));
    }
  }
  return out;
}

// Where the other piece is, there is the sample: its rows are looked up as those of any piece.
std::vector<Path> paths_to_other(const Node& other, const Book& book, const Relaxed& relaxed) {
  std::vector<Path> paths = paths_to(other, book, relaxed);
  for (Path& path : paths) {
    path.name = "the other piece's " + path.name;
    path.piece = nullptr;
    path.met = nullptr;
  }
  return paths;
}

std::vector<Path> closed_size_path(const ClosedSizeIs& closed, const Relaxed& relaxed) {
  if (!closed.size) return {};
  const std::vector<Band> bands = widths(relaxed.rule(*closed.size), false);
  Path path{"closed size", by_closed, {}, nullptr};
  for (const Band& band : bands) {
    Sql seek("FROM sample s INDEXED BY sample_closed WHERE s.closed_width_nm BETWEEN ");
    seek.value(band.low) << " AND ";
    path.seeks.push_back({seek.value(band.high), of_sample});
  }
  if (bands.empty()) return {};
  return {path};
}

std::vector<Path> paths_to_one(const Node& one, const Book& book, const Relaxed& relaxed) {
  const Says& says = one.constraint.front().says;
  if (is_mention(says)) return {mention_path(one, nullptr, book)};
  if (const auto* closed = std::get_if<ClosedSizeIs>(&says)) return closed_size_path(*closed, relaxed);
  Sql seek("FROM sample s WHERE s.id");
  if (const auto* title = std::get_if<TitleIs>(&says)) {
    return {{"title", by_title, {{seek.any_of(std::vector{title->sample}), of_sample}}, nullptr}};
  }
  if (const auto* base = std::get_if<BasedOn>(&says)) {
    return {{"based on", by_title, {{seek.any_of(based_on(book, base->sample)), of_sample}}, nullptr}};
  }
  if (const auto* envelope = std::get_if<EnvelopeIs>(&says)) {
    Sql written("FROM sample s INDEXED BY sample_envelope WHERE s.envelope <> '' AND s.envelope");
    written.any_of(written_envelopes(book, *envelope));
    return {{"envelope", by_closed, {{std::move(written), of_sample}}, nullptr, -1, &one}};
  }
  if (const auto* made = std::get_if<MadeIn>(&says)) {
    Sql dates("FROM sample s INDEXED BY sample_made WHERE s.made > '' AND s.made >= ");
    dates.value(made->from);
    if (!made->to.empty()) dates << " AND s.made <= ", dates.value(made->to);
    return {{"date", by_date, {{std::move(dates), of_sample}}, nullptr, -1, &one}};
  }
  return {};
}

std::int64_t count_rows(const Path& path, const Book& book, std::int64_t most) {
  std::int64_t rows = 0;
  for (const Seek& seek : path.seeks) {
    Sql sql("SELECT COUNT(*) FROM (SELECT 1 ");
    sql << counted_rows(seek) << " LIMIT ";
    sql.value(most - rows) << ")";
    Statement& statement = bound(book, sql);
    if (statement.step()) rows += statement.integer(0);
    statement.reset();
    if (rows >= most) break;
  }
  return rows;
}

// Together: paths to all of what was offered with "or".
std::vector<Path> path_to_any(const Node& any, const Book& book, const Relaxed& relaxed) {
  Path together{"", 0, {}, nullptr};
  for (const Node& child : any.children) {
    std::vector<Path> paths = paths_to(child, book, relaxed);
    if (paths.empty()) return {};
    const auto first = std::min_element(paths.begin(), paths.end(),
                                        [](const Path& a, const Path& b) { return a.order < b.order; });
    together.name += (together.name.empty() ? "" : " or ") + first->name;
    together.order = std::max(together.order, first->order);
    for (Seek& seek : first->seeks) together.seeks.push_back(std::move(seek));
  }
  // SQLite joins no more than 500 walks.
  constexpr std::size_t most_walks = 100;
  if (together.seeks.empty() || together.seeks.size() > most_walks) return {};
  return {together};
}

}  // namespace

const Sql& counted_rows(const Seek& seek) {
  return seek.counted.text.empty() ? seek.from : seek.counted;
}

std::vector<Path> paths_to(const Node& node, const Book& book, const Relaxed& relaxed) {
  switch (node.kind) {
    case Kind::one:
      return paths_to_one(node, book, relaxed);
    case Kind::piece:
      return paths_to_piece(node, book, relaxed);
    case Kind::any:
      return path_to_any(node, book, relaxed);
    case Kind::all: {
      std::vector<Path> out;
      for (const Node& child : node.children) {
        for (Path& path : paths_to(child, book, relaxed)) {
          path.piece = nullptr;
          path.met = nullptr;
          out.push_back(std::move(path));
        }
      }
      return out;
    }
    case Kind::none:
    case Kind::goes:
      return {};
  }
  return {};
}

std::optional<ChosenPath> choose_path(const Node& all, const Book& book, const Relaxed& relaxed,
                                      std::int64_t enough) {
  std::vector<ChosenPath> found;
  for (const Node& child : all.children) {
    for (Path& path : paths_to(child, book, relaxed)) found.push_back({std::move(path), &child});
  }
  if (found.empty()) return std::nullopt;
  std::stable_sort(found.begin(), found.end(),
                   [](const ChosenPath& a, const ChosenPath& b) { return a.path.order < b.path.order; });
  if (found.size() == 1) return std::move(found.front());
  constexpr std::int64_t few = 64;  // looking at the others costs more than walking these
  std::size_t best = 0;
  std::int64_t fewest = enough;
  for (std::size_t i = 0; i < found.size() && fewest > few; ++i) {
    found[i].path.rows = count_rows(found[i].path, book, fewest);
    if (found[i].path.rows >= fewest) continue;
    fewest = found[i].path.rows;
    best = i;
  }
  return std::move(found[best]);
}

}  // namespace insetbook
