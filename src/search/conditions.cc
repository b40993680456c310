// SPDX-License-Identifier: GPL-3.0-or-later
#include "search/conditions.h"

#include <algorithm>
#include <array>

#include "book/piece_names.h"
#include "language/empty_fields.h"
#include "search/envelopes.h"
#include "search/glue.h"
#include "text/utf8.h"

namespace insetbook {
namespace {

using Kind = Node::Kind;

// Where the sides of a size stand.
struct SideColumns {
  std::string width, height, placed;
};
SideColumns of_element(const std::string& e) {
  return {"+" + e + ".width_nm", "+" + e + ".height_nm", e + ".placed"};
}
SideColumns of_closed() {
  return {"s.closed_width_nm", "s.closed_height_nm", "1"};
}

// Beyond any distance: the closeness of what is not met.
constexpr std::string_view not_met = "1152921504606846976";

Sql within(std::string_view side, const Band& band) {
  Sql sql;
  return sql << side << " BETWEEN ", sql.value(band.low) << " AND ", sql.value(band.high);
}

std::string either_known(const SideColumns& columns) {
  return "coalesce(" + columns.height + ", " + columns.width + ")";
}

Sql one_figure_condition(const SizeRule& rule, const SideColumns& columns) {
  const Sql width = within(columns.width, rule.first);
  const Sql height = within(columns.height, rule.first);
  Sql sql;
  if (rule.placed) {
    sql << "CASE WHEN " << columns.placed << " THEN " << (rule.of_height ? height : width) << " ELSE ("
        << width << " OR " << height << ") END";
  } else if (rule.either_side) {
    sql << "(" << width << " OR " << height << ")";
  } else {
    sql << "(" << width << " AND " << within(either_known(columns), rule.first) << ")";
  }
  return Sql("(" + columns.width + " IS NOT NULL AND ") << sql << ")";
}

Sql size_condition(const SizeRule& rule, const SideColumns& columns) {
  if (!rule.two_figures) return one_figure_condition(rule, columns);
  Sql straight, turned, sql;
  straight << "(" << within(columns.width, rule.first) << " AND " << within(columns.height, rule.second)
           << ")";
  turned << "(" << within(columns.width, rule.second) << " AND " << within(columns.height, rule.first) << ")";
  sql << "(" << straight << " OR ";
  if (rule.placed) sql << "NOT " << columns.placed << " AND ";
  return sql << turned << ")";
}

Sql side_distance(std::string_view side, const Band& from) {
  Sql sql;
  if (from.low == from.high) return sql << "abs(" << side << " - ", sql.value(from.low) << ")";
  sql << "max(0, ";
  sql.value(from.low) << " - " << side << ", " << side << " - ";
  return sql.value(from.high) << ")";
}

Sql call(std::string_view function, const Sql& a, const Sql& b) {
  Sql sql;
  return sql << function << "(" << a << ", " << b << ")";
}

// SQLite's parser holds a hundred calls within each other, so none stands in another. One alone would be an
// aggregate.
Sql least_of(const std::vector<Sql>& all) {
  if (all.size() == 1) return all.front();
  Sql sql("min(");
  for (std::size_t i = 0; i < all.size(); ++i) sql << (i > 0 ? ", " : "") << all[i];
  return sql << ")";
}

Sql size_distance(const SizeRule& rule, const SideColumns& columns) {
  if (!rule.two_figures) {
    const Sql width = side_distance(columns.width, rule.from_first);
    const Sql height = side_distance(either_known(columns), rule.from_first);
    if (!rule.placed) return call(rule.either_side ? "min" : "max", width, height);
    Sql sql;
    return sql << "CASE WHEN " << columns.placed << " THEN " << (rule.of_height ? height : width) << " ELSE "
               << call("min", width, height) << " END";
  }
  const Sql straight = call("max", side_distance(columns.width, rule.from_first),
                            side_distance(columns.height, rule.from_second));
  const Sql turned = call("max", side_distance(columns.width, rule.from_second),
                          side_distance(columns.height, rule.from_first));
  if (!rule.placed) return call("min", straight, turned);
  Sql sql;
  return sql << "CASE WHEN " << columns.placed << " THEN " << straight << " ELSE "
             << call("min", straight, turned) << " END";
}

std::string_view form_condition(ClosedSizeIs::Form form) {
  switch (form) {
    case ClosedSizeIs::Form::any:
      return {};
    case ClosedSizeIs::Form::square:
      return "abs(s.closed_width_nm - s.closed_height_nm) <= ";
    case ClosedSizeIs::Form::landscape:
      return "s.closed_width_nm - s.closed_height_nm > ";
    case ClosedSizeIs::Form::portrait:
      return "s.closed_height_nm - s.closed_width_nm > ";
  }
  return {};
}

struct MentionOf {
  std::string_view kind;
  const std::vector<std::string>* terms = nullptr;
};

MentionOf mention_of(const Says& says) {
  if (const auto* technique = std::get_if<TechniqueIs>(&says)) return {"technique", &technique->terms};
  if (const auto* material = std::get_if<MaterialIs>(&says)) return {"material", &material->terms};
  if (const auto* fold_is = std::get_if<FoldIs>(&says)) return {"fold", &fold_is->terms};
  if (const auto* feature = std::get_if<FeatureIs>(&says)) return {"feature", &feature->terms};
  if (const auto* occasion = std::get_if<OccasionIs>(&says)) return {"occasion", &occasion->terms};
  return {};
}

std::vector<std::int64_t> numbers(Statement& statement) {
  std::vector<std::int64_t> out;
  while (statement.step()) out.push_back(statement.integer(0));
  statement.reset();
  return out;
}

// The fields that can be empty, and what that is of a sample.
struct EmptyCondition {
  std::string_view field, condition;
};
constexpr std::array empty_conditions{
    EmptyCondition{"photo", "NOT EXISTS (SELECT 1 FROM photo p WHERE p.sample_id = s.id)"},
    EmptyCondition{"made", "s.made = ''"},
    EmptyCondition{"words", "s.words = ''"},
    EmptyCondition{"steps", "s.steps = ''"},
    EmptyCondition{"note", "s.note = ''"},
    // "none", "none, stamp on the back": none is needed.
    EmptyCondition{"envelope",
                   "(s.envelope = '' OR s.envelope LIKE 'none' OR s.envelope LIKE 'none,%' OR "
                   "s.envelope LIKE 'no envelope%')"},
    EmptyCondition{"based on", "s.based_on = ''"},
    EmptyCondition{"scores", "s.scores = ''"},
    EmptyCondition{"base", "s.base_width_nm IS NULL AND s.base_text = ''"},
    EmptyCondition{"closed", "s.closed_width_nm IS NULL"},
    EmptyCondition{"fold",
                   "NOT EXISTS (SELECT 1 FROM mention m WHERE m.sample_id = s.id AND m.kind = 'fold')"},
    EmptyCondition{"technique",
                   "NOT EXISTS (SELECT 1 FROM mention m WHERE m.sample_id = s.id AND m.kind = 'technique')"},
    EmptyCondition{"feature",
                   "NOT EXISTS (SELECT 1 FROM mention m WHERE m.sample_id = s.id AND m.kind = 'feature')"},
    EmptyCondition{"occasion",
                   "NOT EXISTS (SELECT 1 FROM mention m WHERE m.sample_id = s.id AND m.kind = 'occasion')"},
    EmptyCondition{"material",
                   "NOT EXISTS (SELECT 1 FROM mention m WHERE m.sample_id = s.id AND m.kind = 'material')"},
    EmptyCondition{"supply",
                   "NOT EXISTS (SELECT 1 FROM mention m WHERE m.sample_id = s.id AND m.kind = 'supply')"},
    EmptyCondition{"colour",
                   "NOT EXISTS (SELECT 1 FROM mention m WHERE m.sample_id = s.id AND m.kind = 'paper')"},
    EmptyCondition{"ink", "NOT EXISTS (SELECT 1 FROM mention m WHERE m.sample_id = s.id AND m.kind = 'ink')"},
    EmptyCondition{"element", "NOT EXISTS (SELECT 1 FROM element o WHERE o.sample_id = s.id)"},
};
static_assert(std::ranges::is_permutation(empty_conditions, empty_fields, {}, &EmptyCondition::field,
                                          &EmptyField::name));

}  // namespace

std::string_view empty_field_condition(std::string_view field) {
  for (const EmptyCondition& each : empty_conditions) {
    if (each.field == field) return each.condition;
  }
  return {};
}

DieMeaning die_meaning(const Book& book, const DieIs& die) {
  DieMeaning meaning;
  meaning.dies = die.dies;
  meaning.by_line = die.lies_in || !die.line.empty();
  if (meaning.by_line) {
    Sql lines("SELECT id FROM line WHERE die_id");
    lines.any_of(die.dies);
    if (!die.line.empty()) {
      lines << " AND (kind = ";
      lines.value(die.line) << " OR name = ";
      lines.value(die.line) << ")";
    }
    meaning.lines = numbers(bound(book, lines));
  } else {
    Sql sets("SELECT o.set_id FROM die o WHERE o.id");
    sets.any_of(die.dies) << " GROUP BY o.set_id HAVING COUNT(*) = "
                             "(SELECT COUNT(*) FROM die a WHERE a.set_id = o.set_id)";
    meaning.sets = numbers(bound(book, sets));
    // A set that was meant whole may have no dies yet.
    for (const std::int64_t set : die.sets)
      if (std::find(meaning.sets.begin(), meaning.sets.end(), set) == meaning.sets.end())
        meaning.sets.push_back(set);
  }
  return meaning;
}

std::vector<std::int64_t> based_on(const Book& book, std::int64_t sample) {
  Statement& key = book.statement("SELECT key FROM sample WHERE id = ?");
  key.bind(1, sample);
  const std::string wanted = key.step() ? std::string(key.text(0)) : std::string();
  key.reset();
  std::vector<std::int64_t> ids;
  if (wanted.empty()) return ids;
  Statement& all = book.statement("SELECT id, based_on FROM sample WHERE based_on <> ''");
  while (all.step()) {
    if (fold(all.text(1)) == wanted) ids.push_back(all.integer(0));
  }
  all.reset();
  return ids;
}

bool is_mention(const Says& says) {
  return mention_of(says).terms || std::holds_alternative<ColourIs>(says) ||
         std::holds_alternative<SupplyIs>(says);
}

Sql mention_terms(const Says& says, std::string_view plus) {
  Sql sql;
  sql << plus << "m.kind";
  if (const MentionOf of = mention_of(says); of.terms) {
    sql << " = ";
    sql.value(of.kind) << " AND " << plus << "m.term";
    sql.any_of(*of.terms);
  } else if (const auto* colour = std::get_if<ColourIs>(&says)) {
    const bool paper = colour->use != ColourUse::ink;
    const bool ink = colour->use != ColourUse::paper;
    sql << (paper && ink ? " IN ('paper', 'ink')" : paper ? " = 'paper'" : " = 'ink'");
    sql << " AND " << plus << "m.colour_id";
    sql.any_of(colour->colours);
  } else if (const auto* supply = std::get_if<SupplyIs>(&says)) {
    sql << " = 'supply' AND " << plus << "m.supply_id";
    sql.any_of(supply->supplies);
  }
  return sql;
}

std::vector<std::int64_t> supplies_of_material(const Book& book, const MaterialIs& material) {
  std::vector<std::string> kinds;
  Statement& kind = book.statement("SELECT DISTINCT kind FROM supply");
  while (kind.step()) {
    const std::string written(kind.text(0));
    if (std::find(material.terms.begin(), material.terms.end(), fold(written)) != material.terms.end())
      kinds.push_back(written);
  }
  kind.reset();
  if (kinds.empty()) return {};
  Sql supplies("SELECT id FROM supply WHERE kind");
  return numbers(bound(book, supplies.any_of(kinds)));
}

Conditions::Conditions(const Book& book, const Relaxed& relaxed, std::string id_column, TextIds text_ids)
    : book_(book), relaxed_(relaxed), id_(std::move(id_column)), text_ids_(std::move(text_ids)) {}

namespace {

// Those of the terms that are said of anything in this book: a fold has a dozen narrower terms, and a book a
// few of them.
std::vector<std::string> said_in_book(const Book& book, std::string_view kind,
                                      const std::vector<std::string>& terms) {
  std::vector<std::string> said;
  Statement& row = book.statement("SELECT EXISTS (SELECT 1 FROM mention WHERE kind = ? AND term = ?)");
  for (const std::string& term : terms) {
    row.bind_all(kind, std::string_view(term));
    if (row.step() && row.integer(0) != 0) said.push_back(term);
    row.reset();
  }
  return said;
}

Says with_terms(const Says& says, std::vector<std::string> terms) {
  Says changed = says;
  std::visit(
      [&](auto& each) {
        if constexpr (requires { each.terms; }) each.terms = std::move(terms);
      },
      changed);
  return changed;
}

}  // namespace

Sql Conditions::mentioned(const Says& asked, bool of_piece) {
  Says says = asked;
  if (const MentionOf of = mention_of(asked); of.terms && !of_piece && of.terms->size() > 1)
    says = with_terms(asked, said_in_book(book_, of.kind, *of.terms));
  // A few terms are looked up one by one; with many it is quicker to look at all that is said of the sample.
  constexpr std::size_t few = 12;
  const MentionOf of = mention_of(says);
  // Supplies are of a material by their kind, whatever is said of samples.
  const auto* material = std::get_if<MaterialIs>(&asked);
  const std::vector<std::int64_t> supplies = material ? supplies_of(*material) : std::vector<std::int64_t>();
  const bool look_up = !of_piece && supplies.empty() && (!of.terms || of.terms->size() <= few);
  Sql sql("EXISTS (SELECT 1 FROM mention m WHERE ");
  if (of_piece) {
    sql << "m.element_id = " << e_ << ".id";
  } else {
    sql << "m.sample_id = " << id_;
  }
  if (supplies.empty()) return sql << " AND " << mention_terms(says, look_up ? "" : "+") << ")";
  sql << " AND (" << mention_terms(says, "+") << " OR " << mention_terms(SupplyIs{supplies, ""}, "+");
  return sql << "))";
}

const std::vector<std::int64_t>& Conditions::supplies_of(const MaterialIs& material) {
  const auto [place, added] = supplies_of_.try_emplace(material.terms);
  if (added) place->second = supplies_of_material(book_, material);
  return place->second;
}

Sql Conditions::closed_size(const ClosedSizeIs& closed) {
  speaks_of_sample_ = true;
  std::vector<Sql> parts;
  if (closed.size) parts.push_back(size_condition(relaxed_.rule(*closed.size), of_closed()));
  if (closed.form != ClosedSizeIs::Form::any) {
    Sql form(form_condition(closed.form));
    form.value(square_within.nm());
    parts.push_back(std::move(form));
  }
  return joined(parts, " AND ");
}

Sql Conditions::cut_or_lies(const DieIs& die) {
  Sql sql;
  if (die.any) return sql << "(" << e_ << ".die_id IS NOT NULL OR " << e_ << ".set_id IS NOT NULL)";
  const DieMeaning meaning = die_meaning(book_, die);
  if (die.lies_in) {
    sql << "+" << e_ << ".in_line_id";
    return sql.any_of(meaning.lines);
  }
  sql << (meaning.by_line ? "+" : "(+") << e_ << (meaning.by_line ? ".line_id" : ".die_id");
  if (meaning.by_line) return sql.any_of(meaning.lines);
  sql.any_of(meaning.dies) << " OR +" << e_ << ".die_id IS NULL AND +" << e_ << ".set_id";
  return sql.any_of(meaning.sets) << ")";
}

// As it was recorded, or as the piece's own name says.
Sql Conditions::has_role(const RoleIs& role) {
  Sql recorded;
  recorded << "+" << e_ << ".role";
  recorded.any_of(role.terms);
  if (role.called.empty()) return recorded;
  Sql sql("(");
  sql << recorded << " OR called(" << e_ << ".key, ";
  return sql.value(called_one_of(role.called)) << "))";
}

// What is said of the sample's own columns.
Sql Conditions::field_says(const Says& says) {
  Sql sql;
  if (const auto* made = std::get_if<MadeIn>(&says)) {
    speaks_of_sample_ = true;
    sql << "(s.made <> '' AND s.made >= ";
    sql.value(made->from);
    if (!made->to.empty()) sql << " AND s.made <= ", sql.value(made->to);
    return sql << ")";
  }
  if (const auto* base = std::get_if<BasedOn>(&says)) {
    sql << "+" << id_;
    return sql.any_of(based_on(book_, base->sample));
  }
  if (const auto* title = std::get_if<TitleIs>(&says)) {
    sql << "+" << id_ << " = ";
    return sql.value(title->sample);
  }
  if (const auto* envelope = std::get_if<EnvelopeIs>(&says)) {
    speaks_of_sample_ = true;
    sql << "s.envelope";
    return sql.any_of(written_envelopes(book_, *envelope));
  }
  if (const auto* none = std::get_if<HasNo>(&says)) {
    speaks_of_sample_ = true;
    return sql << "(" << empty_field_condition(none->field) << ")";
  }
  return closed_size(std::get<ClosedSizeIs>(says));
}

Sql Conditions::sample_says(const Says& says, const Node& node) {
  if (is_mention(says)) return mentioned(says, false);
  if (std::holds_alternative<WordsAre>(says) || std::holds_alternative<AlikeTo>(says)) {
    Sql sql;
    sql << "+" << id_;
    return sql.any_of(text_ids_(node));
  }
  return field_says(says);
}

Sql Conditions::piece_says(const Says& says, const Node& node) {
  Sql sql;
  if (const auto* size = std::get_if<SizeIs>(&says))
    return size_condition(relaxed_.rule(*size), of_element(e_));
  if (const auto* shape = std::get_if<ShapeIs>(&says))
    return sql << "+" << e_ << ".shape", sql.any_of(shape->terms);
  if (const auto* role = std::get_if<RoleIs>(&says)) return has_role(*role);
  if (const auto* side = std::get_if<SideIs>(&says))
    // A blank side is the front.
    return sql << "+" << e_ << ".side",
           sql.any_of(side->side == "front" ? std::vector<std::string>{"front", ""}
                                            : std::vector{side->side});
  if (const auto* die = std::get_if<DieIs>(&says)) return cut_or_lies(*die);
  if (const auto* glue = std::get_if<GlueIs>(&says))
    return sql << "+" << e_ << ".glue", sql.any_of(written_glues(book_, *glue));
  if (const auto* place = std::get_if<PlaceIs>(&says)) {
    std::string words;
    for (const std::string& word : place->words) words += (words.empty() ? "" : " ") + word;
    sql << "(" << e_ << ".at <> '' AND placed(" << e_ << ".at, ";
    return sql.value(words) << "))";
  }
  if (std::holds_alternative<CountIs>(says)) return Sql("1");  // counted over the slot
  const bool of_piece = std::holds_alternative<TechniqueIs>(says) ||
                        std::holds_alternative<MaterialIs>(says) || std::holds_alternative<ColourIs>(says) ||
                        std::holds_alternative<SupplyIs>(says);
  if (of_piece) return mentioned(says, true);
  return sample_says(says, node);
}

// Counts how deep the statement is nested; where it is too deep for SQLite, what is left lets everything
// pass.
class Conditions::Deeper {
 public:
  Deeper(Conditions& conditions, Kind kind) : conditions_(conditions), by_(sql_depth_of(kind)) {
    conditions_.depth_ += by_;
    excludes_ = kind == Kind::none;
    if (excludes_) conditions_.excluded_ = !conditions_.excluded_;
  }
  ~Deeper() {
    conditions_.depth_ -= by_;
    if (excludes_) conditions_.excluded_ = !conditions_.excluded_;
  }
  Deeper(const Deeper&) = delete;
  Deeper& operator=(const Deeper&) = delete;
  bool too_deep() const { return conditions_.depth_ > deepest_in_sql; }

 private:
  Conditions& conditions_;
  int by_;
  bool excludes_ = false;
};

// "b goes to a, or a to b, in one of the ways that mean it".
Sql Conditions::linked(const GoesWays& ways, const std::string& a, const std::string& b) {
  Sql sql("(" + b + ".id = " + a + ".goes_to AND " + a + ".goes_how");
  sql.any_of(ways.own);
  if (ways.other.empty()) return sql << ")";
  sql << " OR " << b << ".goes_to = " << a << ".id AND " << b << ".goes_how";
  return sql.any_of(ways.other) << ")";
}

// A piece that is recorded on no other piece.
Sql Conditions::on_a_face(const std::string& piece) {
  return Sql("+" + piece + ".goes_how = 'on' AND +" + piece + ".goes_to IS NULL");
}

Sql Conditions::is_base(const std::string& piece) {
  return Sql("+" + piece + ".role = '" + std::string(base_role) + "'");
}

// "FROM element o1 WHERE …": the pieces that row `e` goes with, as far as they are what was asked. All of
// them at once, by the few pieces of the sample: for counting.
Sql Conditions::others(const GoesWays& ways, const std::string& a, const Node& asked) {
  Sql sql("FROM element " + e_ + " WHERE " + e_ + ".sample_id = " + a + ".sample_id AND (");
  sql << linked(ways, a, e_);
  const std::string not_itself = " AND " + a + ".id <> " + e_ + ".id";
  if (ways.first_on_base()) sql << " OR " << on_a_face(a) << " AND " << is_base(e_) << not_itself;
  if (ways.second_on_base()) sql << " OR " << on_a_face(e_) << " AND " << is_base(a) << not_itself;
  return sql << ") AND " << of_piece(asked);
}

// Whether row `e` goes with one that was asked: by the row that it names or that names it, which is a
// look-up; among the pieces of its sample only where it lies on the base or is it.
Sql Conditions::any_other(const GoesWays& ways, const std::string& a, const Node& asked) {
  const std::string from = "EXISTS (SELECT 1 FROM element " + e_ + " WHERE ";
  const std::string in_sample = e_ + ".sample_id = " + a + ".sample_id AND ";
  const std::string not_itself = " AND " + a + ".id <> " + e_ + ".id AND ";
  Sql sql("(" + from + "+" + in_sample);
  sql << linked(ways, a, e_) << " AND " << of_piece(asked) << ")";
  // The index of roles leads to the base of a sample: it holds none that is blank, which has to be said.
  if (ways.first_on_base())
    sql << " OR " << on_a_face(a) << " AND EXISTS (SELECT 1 FROM element " << e_
        << " INDEXED BY element_role WHERE " << in_sample << e_ << ".role = '" << base_role << "' AND " << e_
        << ".role <> ''" << not_itself << of_piece(asked) << ")";
  if (ways.second_on_base())
    sql << " OR " << is_base(a) << " AND " << from << in_sample << on_a_face(e_) << not_itself
        << of_piece(asked) << ")";
  return sql << ")";
}

// Calls `use` while `e_` names the row of another piece than the one spoken of so far, whose name it is
// given.
template <class Use>
Sql Conditions::of_another(Use use) {
  const std::string a = e_;
  ++others_;
  e_ = "o" + std::to_string(others_);
  Sql sql = use(a);
  e_ = a;
  --others_;
  return sql;
}

Sql Conditions::goes_with(const GoesWays& ways, const Node& asked) {
  if (asked.kind == Kind::any) {
    std::vector<Sql> offered;
    for (const Node& child : asked.children) offered.push_back(goes_with(ways, child));
    return joined(offered, " OR ");
  }
  const int wanted = slot_of(asked).wanted;
  return of_another([&](const std::string& a) {
    // Written once where pieces go with pieces that go with pieces: each writing repeats all that is deeper.
    const bool nested = others_ > 1;
    if (wanted == 1 && !nested) return any_other(ways, a, asked);
    Sql sql(wanted == 1 ? "EXISTS (SELECT 1 " : "coalesce((SELECT SUM(" + e_ + ".count) ");
    sql << others(ways, a, asked);
    if (wanted == 1) return sql << ")";
    sql << "), 0) >= ";
    return sql.value(wanted);
  });
}

Sql Conditions::of_goes(const Node& node) {
  const GoesWays ways = goes_ways(std::get<GoesIs>(node.constraint.front().says).how);
  if (!node.children.empty()) return goes_with(ways, node.children.front());
  Sql sql("(+" + e_ + ".goes_how");
  sql.any_of(ways.own);
  if (ways.other.empty()) return sql << ")";
  return sql << of_another([&](const std::string& a) {
           Sql other(" OR EXISTS (SELECT 1 FROM element " + e_ + " WHERE " + e_ + ".sample_id = " + a +
                     ".sample_id AND (+" + e_ + ".goes_to = " + a + ".id AND " + e_ + ".goes_how");
           other.any_of(ways.other);
           if (ways.second_on_base())
             other << " OR " << is_base(a) << " AND " << on_a_face(e_) << " AND " << e_ << ".id <> " << a
                   << ".id";
           return other << ")))";
         });
}

Sql Conditions::of_piece(const Node& node, const Node* except) {
  if (node.kind == Kind::one) return piece_says(node.constraint.front().says, node);
  const Deeper deeper(*this, node.kind);
  if (deeper.too_deep()) return left_open();
  if (node.kind == Kind::goes) return of_goes(node);
  std::vector<Sql> parts;
  for (const Node& child : node.children) {
    if (&child != except) parts.push_back(of_piece(child));
  }
  if (node.kind == Kind::any) return joined(parts, " OR ");
  if (node.kind != Kind::none) return joined(parts, " AND ");
  Sql sql("NOT coalesce(");
  return sql << joined(parts, " OR ") << ", 0)";
}

Sql Conditions::of_slot(const Slot& slot) {
  std::vector<Sql> offered;
  for (const Node* piece : slot.pieces) offered.push_back(of_piece(*piece));
  const Sql condition = joined(offered, " OR ");
  Sql sql;
  if (slot.wanted == 1) {
    return sql << "EXISTS (SELECT 1 FROM element e WHERE e.sample_id = " << id_ << " AND " << condition
               << ")";
  }
  sql << "(SELECT SUM(e.count) FROM element e WHERE e.sample_id = " << id_ << " AND " << condition << ") >= ";
  return sql.value(slot.wanted);
}

// Hall's condition for every part of the group with two slots or more; parts of one are the slots' own
// conditions.
Sql Conditions::told_apart(const std::vector<Slot>& slots, const std::vector<std::size_t>& group) {
  Sql sql("(SELECT ");
  bool first = true;
  for (unsigned part = 1; part < (1U << group.size()); ++part) {
    if ((part & (part - 1)) == 0) continue;
    std::int64_t wanted = 0;
    for (std::size_t i = 0; i < group.size(); ++i) {
      if (part >> i & 1U) wanted += slots[group[i]].wanted;
    }
    if (!first) sql << " AND ";
    first = false;
    sql << "SUM(CASE WHEN meets & ";
    sql.value(part) << " THEN count ELSE 0 END) >= ";
    sql.value(wanted);
  }
  sql << " FROM (SELECT e.count AS count, 0";
  for (std::size_t i = 0; i < group.size(); ++i) {
    std::vector<Sql> offered;
    for (const Node* piece : slots[group[i]].pieces) offered.push_back(of_piece(*piece));
    sql << " | (CASE WHEN " << joined(offered, " OR ") << " THEN ";
    sql.value(std::int64_t{1} << i) << " ELSE 0 END)";
  }
  return sql << " AS meets FROM element e WHERE e.sample_id = " << id_ << "))";
}

Sql Conditions::of_children(const Node& all, const Node* except) {
  const Parts parts = parts_of(all);
  std::vector<Sql> conditions;
  for (const Node* other : parts.others) {
    if (other != except) conditions.push_back(of_sample(*other));
  }
  for (const Slot& slot : parts.slots) {
    const bool met = except && slot.wanted == 1 && slot.pieces.size() == 1 && slot.pieces.front() == except;
    if (!met) conditions.push_back(of_slot(slot));
  }
  for (const auto& group : sharing_groups(parts.slots)) {
    const bool few = group.size() <= most_told_apart_in_sql;
    conditions.push_back(few ? told_apart(parts.slots, group) : left_open());
  }
  return joined(conditions, " AND ");
}

Sql Conditions::of_sample(const Node& node) {
  if (node.kind == Kind::one) return sample_says(node.constraint.front().says, node);
  const Deeper deeper(*this, node.kind);
  if (deeper.too_deep()) return left_open();
  if (node.kind == Kind::all) return of_children(node, nullptr);
  if (node.kind == Kind::piece) return of_slot(slot_of(node));
  std::vector<Sql> parts;
  for (const Node& child : node.children) parts.push_back(of_sample(child));
  if (node.kind == Kind::any) return joined(parts, " OR ");
  Sql sql("NOT coalesce(");
  return sql << joined(parts, " OR ") << ", 0)";
}

bool Conditions::ranks(const Node& node) const {
  const auto sizes = sizes_in(node);
  return std::any_of(sizes.begin(), sizes.end(),
                     [&](const SizeIs* size) { return relaxed_.rule(*size).ranks; });
}

std::int64_t Conditions::exact(const Node& node) const {
  if (node.kind == Kind::none) return 0;
  if (node.kind == Kind::one) {
    const auto sizes = sizes_in(node);
    return sizes.empty() ? 0 : relaxed_.rule(*sizes.front()).exact;
  }
  std::int64_t within = 0;
  for (const Node& child : node.children) {
    within = node.kind == Kind::any ? std::max(within, exact(child)) : within + exact(child);
  }
  return within;
}

// Of what was offered with "or", the nearest that is met.
Sql Conditions::nearest(const Node& any, bool of_piece) {
  std::vector<Sql> offered;
  for (const Node& child : any.children) {
    Sql& each = offered.emplace_back("CASE WHEN ");
    each << (of_piece ? Conditions::of_piece(child) : of_sample(child)) << " THEN "
         << (of_piece ? distance_of_piece(child) : distance_of_sample(child)) << " ELSE " << not_met
         << " END";
  }
  return least_of(offered);
}

Sql Conditions::distance_of_piece(const Node& node) {
  if (!ranks(node)) return Sql("0");
  if (node.kind == Kind::one) {
    const auto* size = std::get_if<SizeIs>(&node.constraint.front().says);
    return size ? size_distance(relaxed_.rule(*size), of_element(e_)) : distance_of_sample(node);
  }
  const Deeper deeper(*this, node.kind);
  if (deeper.too_deep()) return Sql("0");
  if (node.kind == Kind::goes) {
    const GoesWays ways = goes_ways(std::get<GoesIs>(node.constraint.front().says).how);
    return of_another([&](const std::string& a) {
      Sql sql("(SELECT MIN(");
      return sql << distance_of_piece(node.children.front()) << ") " << others(ways, a, node.children.front())
                 << ")";
    });
  }
  if (node.kind == Kind::any) return nearest(node, true);
  std::vector<Sql> parts;
  for (const Node& child : node.children) {
    if (ranks(child)) parts.push_back(distance_of_piece(child));
  }
  return joined(parts, " + ");
}

Sql Conditions::distance_of_sample(const Node& node) {
  if (!ranks(node)) return Sql("0");
  if (node.kind == Kind::one) {
    speaks_of_sample_ = true;
    return size_distance(relaxed_.rule(*std::get<ClosedSizeIs>(node.constraint.front().says).size),
                         of_closed());
  }
  const Deeper deeper(*this, node.kind);
  if (deeper.too_deep()) return Sql("0");
  if (node.kind == Kind::piece) {
    Sql sql("(SELECT MIN(");
    return sql << distance_of_piece(node) << ") FROM element e WHERE e.sample_id = " << id_ << " AND "
               << of_piece(node) << ")";
  }
  if (node.kind == Kind::any) return nearest(node, false);
  std::vector<Sql> parts;
  for (const Node& child : node.children) {
    if (ranks(child)) parts.push_back(distance_of_sample(child));
  }
  return joined(parts, " + ");
}

}  // namespace insetbook
