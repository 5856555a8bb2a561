#include "whorl_write.hpp"

#include "drawing/wording_file.hpp"
#include "fabric/same_work.hpp"
#include "fabric/work.hpp"
#include "pattern/read.hpp"

#include <algorithm>

namespace whorl {
namespace {

constexpr int most_readings = 40; ///< of the whole text, while the forms are chosen

const drawing::Wording& texts_in(std::string_view language) {
  static const drawing::Wording none; // nothing falls back to English in silence
  const drawing::Wording* const found = drawing::find_wording(language);
  return found != nullptr ? *found : none;
}

writing::Say say_in(std::string_view language) {
  const drawing::Wording& wording = texts_in(language);
  return [&wording](std::string_view id, const std::vector<std::string>& with) {
    return drawing::say(wording, id, with);
  };
}

std::string_view first_part(std::string_view tag) { return tag.substr(0, tag.find('-')); }

/// A line break within a cell of the table.
std::string in_cell(std::string_view text) {
  std::string cell;
  for (const char c : text)
    if (c == '\n')
      cell += "\\n";
    else if (c == '\t')
      cell += ' ';
    else if (c != '\r')
      cell += c;
  return cell;
}

std::string out_of_cell(std::string_view cell) {
  std::string text;
  for (std::size_t i = 0; i < cell.size(); ++i)
    if (cell.substr(i, 2) == "\\n")
      text += '\n', ++i;
    else
      text += cell[i];
  return text;
}

/// The translations of a table that has been filled in; rows without one are passed over.
std::map<std::string, std::string> filled_in(std::string_view table) {
  std::map<std::string, std::string> filled;
  while (!table.empty()) {
    const std::size_t end = std::min(table.find('\n'), table.size());
    std::string_view row = table.substr(0, end);
    table.remove_prefix(std::min(end + 1, table.size()));
    if (!row.empty() && row.back() == '\r') row.remove_suffix(1);
    const std::size_t tab = row.find('\t');
    if (tab == std::string_view::npos || row.find_first_not_of(" \t", tab) == std::string_view::npos)
      continue;
    filled[out_of_cell(row.substr(0, tab))] = out_of_cell(row.substr(tab + 1));
  }
  return filled;
}

/// Chooses the form of every passage so that the whole reads back as the same work.
class Choice {
public:
  Choice(const Writing& writing, std::vector<Draft>& drafts) : writing_(writing), drafts_(drafts) {}

  void choose() {
    choose_each();
    if (differing() == 0 || !has_list()) return;
    // A list of abbreviations is read too, and may turn the words of every round.
    const std::vector<Draft> with_list = drafts_;
    const std::size_t before = differing();
    for (Draft& draft : drafts_)
      if (draft.passage.sort == writing::Passage::Sort::list) draft.least = last_of(draft);
    choose_each();
    if (differing() >= before) drafts_ = with_list;
  }

private:
  ReadWork read() { return read_work(composed(writing_.pattern.source, drafts_), writing_.to); }

  void choose_each() {
    take_first_that_fit();
    for (int i = 0; i < most_readings; ++i)
      if (!take_next_of_first_that_differs()) return;
  }

  bool has_list() const {
    return std::any_of(drafts_.begin(), drafts_.end(), [](const Draft& draft) {
      return draft.passage.sort == writing::Passage::Sort::list && draft.chosen < last_of(draft);
    });
  }

  /// How many passages say something else than what was typed, stitch by stitch.
  std::size_t differing() {
    const ReadWork read = this->read();
    const Judge judge(writing_.pattern, read, drafts_);
    std::size_t count = 0;
    for (std::size_t i = 0; i < drafts_.size(); ++i) count += judge.is_same(i, true) ? 0U : 1U;
    return count;
  }

  static std::size_t last_of(const Draft& draft) { return draft.forms.size() - 1; }
  std::size_t last(std::size_t draft) const { return last_of(drafts_[draft]); }

  /// Each form of every passage once, all of one rank together: the first that says the same by itself is
  /// taken.
  void take_first_that_fit() {
    std::size_t most = 0;
    for (std::size_t i = 0; i < drafts_.size(); ++i) most = std::max(most, last(i));
    std::vector<bool> fits(drafts_.size(), false);
    std::vector<std::size_t> taken(drafts_.size(), 0);
    for (std::size_t rank = 0; rank <= most; ++rank) {
      for (std::size_t i = 0; i < drafts_.size(); ++i)
        drafts_[i].chosen = fits[i] ? taken[i] : std::min(std::max(rank, drafts_[i].least), last(i));
      const ReadWork read = this->read();
      const Judge judge(writing_.pattern, read, drafts_);
      for (std::size_t i = 0; i < drafts_.size(); ++i) {
        if (fits[i]) continue;
        taken[i] = drafts_[i].chosen;
        fits[i] = judge.is_same(i, false);
      }
      if (std::find(fits.begin(), fits.end(), false) == fits.end()) break;
    }
    for (std::size_t i = 0; i < drafts_.size(); ++i) drafts_[i].chosen = taken[i];
  }

  /// False: nothing differs any more that could be written in another way.
  bool take_next_of_first_that_differs() {
    const ReadWork read = this->read();
    const Judge judge(writing_.pattern, read, drafts_);
    bool strictly = true;
    for (std::size_t i = 0; i < drafts_.size(); ++i) {
      if (drafts_[i].unread) strictly = false; // a translator may have understood it
      if (judge.is_same(i, strictly)) continue;
      if (drafts_[i].chosen < last(i)) {
        ++drafts_[i].chosen;
        return true;
      }
      strictly = false; // what stands as typed may leave other stitches for what follows
    }
    return false;
  }

  const Writing& writing_;
  std::vector<Draft>& drafts_;
};

/// A part that could not be given its name in the other language keeps its own, wherever it is named.
std::vector<Draft> chosen_forms(Writing& writing) {
  for (;;) {
    std::vector<Draft> drafts = drafts_of(writing);
    Choice(writing, drafts).choose();
    bool all_named = true;
    for (const Draft& draft : drafts) {
      const bool lost = draft.renamed && draft.typed && draft.chosen + 1 == draft.forms.size();
      if (lost && writing.kept_names.insert(writing.pattern.tree.parts[draft.passage.part].name).second)
        all_named = false;
    }
    if (all_named) return drafts;
  }
}

/// How many lines of work stay as they are typed.
std::size_t lines_as_typed(const std::vector<Draft>& drafts) {
  return static_cast<std::size_t>(std::count_if(drafts.begin(), drafts.end(), [](const Draft& draft) {
    return draft.work && draft.typed && draft.chosen + 1 == draft.forms.size();
  }));
}

/// The pattern's own abbreviations are kept, if no line is lost by it.
std::vector<Draft> best_forms(Writing& writing) {
  std::vector<Draft> best = chosen_forms(writing);
  for (const Writing::Keeps keeps : {Writing::Keeps::plain, Writing::Keeps::none}) {
    if (own_names(writing).empty() || lines_as_typed(best) == 0) break;
    writing.keeps = keeps;
    std::vector<Draft> fewer = chosen_forms(writing);
    if (lines_as_typed(fewer) < lines_as_typed(best)) best = std::move(fewer);
  }
  return best;
}

/// What is left for the translator.
std::vector<LeftPassage> left_of(const Writing& writing, const std::vector<Draft>& drafts,
                                 const Judge& judge) {
  std::vector<LeftPassage> left;
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    const Draft& draft = drafts[i];
    const bool same = judge.is_same(i, false);
    const bool as_typed = draft.typed && draft.chosen + 1 == draft.forms.size();
    const std::string& form = draft.forms[draft.chosen];
    const bool partly = std::find(draft.partly.begin(), draft.partly.end(), form) != draft.partly.end();
    const bool listed = (as_typed || partly) && !draft.prose &&
                        !(draft.work && !draft.unread && writing.same_language && same);
    if (same && !listed) continue;
    const pattern::Span span = draft.passage.span;
    if (span.empty() || draft.passage.sort == writing::Passage::Sort::language) continue;
    left.push_back({writing.pattern.source.position(span.begin).line,
                    std::string(writing.pattern.source.at(span)), (draft.work && !partly) || !same});
  }
  return left;
}

/// Translations that do not stand in the text.
std::vector<LeftPassage> refused_of(const Writing& writing, const std::vector<Draft>& drafts) {
  std::vector<LeftPassage> refused;
  for (const auto& [typed, translation] : writing.filled) {
    const auto draft = std::find_if(drafts.begin(), drafts.end(), [&](const Draft& one) {
      return one.filled && writing.pattern.source.at(one.passage.span) == typed;
    });
    if (draft == drafts.end())
      refused.push_back({0, typed, false});
    else if (draft->chosen != 0)
      refused.push_back(
          {writing.pattern.source.position(draft->passage.span.begin).line, translation, draft->work});
  }
  return refused;
}

std::size_t count_lines(std::string_view text) {
  return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n'));
}

WrittenLine::Sort sort_of(const Pattern::Content& pattern, const std::vector<Draft>& drafts,
                          pattern::Span out_line) {
  using Sort = writing::Passage::Sort;
  for (const Draft& draft : drafts) {
    if (draft.out.end <= out_line.begin || draft.out.begin >= out_line.end) continue;
    if (draft.passage.sort == Sort::heading) return WrittenLine::Sort::heading;
    if (draft.passage.sort == Sort::round) return WrittenLine::Sort::round;
    const pattern::Span title = pattern.tree.title_span, span = draft.passage.span;
    if (!title.empty() && span.begin >= title.begin && span.begin < title.end)
      return WrittenLine::Sort::title;
  }
  return WrittenLine::Sort::plain;
}

/// The author's line at which a place of the written text stands.
std::size_t typed_line_of(const pattern::Source& source, const std::vector<Draft>& drafts,
                          std::uint32_t out) {
  std::uint32_t typed = 0, written = 0;
  for (const Draft& draft : drafts) {
    if (out < draft.out.begin) break;
    if (out < draft.out.end) return source.line_of(draft.passage.span.begin);
    typed = draft.passage.span.end, written = draft.out.end;
  }
  const auto size = static_cast<std::uint32_t>(source.text().size());
  return source.line_of(std::min(typed + (out - written), size == 0 ? 0U : size - 1U));
}

/// The written lines with those that they stand for; a line that is written as several has its author's
/// beside the first of them.
std::vector<WrittenLine> lines_of(const Pattern::Content& pattern, const std::vector<Draft>& drafts,
                                  const pattern::Source& written) {
  std::vector<WrittenLine> lines;
  std::size_t shown = 0; // so many of the author's lines
  for (std::size_t i = 0; i < written.line_count(); ++i) {
    const pattern::Span span = written.line(i);
    WrittenLine line{sort_of(pattern, drafts, span), "", std::string(written.at(span))};
    if (span.empty()) line.sort = WrittenLine::Sort::blank;
    const std::size_t of = typed_line_of(pattern.source, drafts, span.begin);
    for (; shown <= of && shown < pattern.source.line_count(); ++shown) {
      const std::string_view typed = pattern.source.at(pattern.source.line(shown));
      if (!typed.empty()) line.typed += (line.typed.empty() ? "" : "\n") + std::string(typed);
    }
    lines.push_back(std::move(line));
  }
  if (count_lines(written.text()) + 1 == lines.size() && !lines.empty() && lines.back().written.empty())
    lines.pop_back();
  return lines;
}

} // namespace

ReadWork read_work(std::string_view text, const words::Vocabulary& words) {
  pattern::Source source(text);
  pattern::Tree tree = pattern::read(source, words).tree;
  fabric::Fabric fabric = fabric::work(tree).fabric;
  return {std::move(source), std::move(tree), std::move(fabric)};
}

std::string composed(const pattern::Source& source, std::vector<Draft>& drafts) {
  std::string text;
  std::uint32_t at = 0;
  for (Draft& draft : drafts) {
    text += source.at({at, draft.passage.span.begin});
    draft.out.begin = static_cast<std::uint32_t>(text.size());
    text += draft.forms[draft.chosen];
    draft.out.end = static_cast<std::uint32_t>(text.size());
    at = draft.passage.span.end;
  }
  return text + std::string(source.at({at, static_cast<std::uint32_t>(source.text().size())}));
}

std::shared_ptr<const Written::Content> written_of(const Pattern::Content& pattern,
                                                   const WriteOptions& options) {
  const auto words_of = [](std::string_view tag) -> const words::Vocabulary& {
    const words::Vocabulary* const found = words::find_vocabulary(tag);
    return found != nullptr ? *found : *words::find_vocabulary("en-US");
  };
  const words::Vocabulary &from = words_of(pattern.tree.language),
                          &to = words_of(language_or(options.language, pattern.tree));
  Writing writing{pattern,
                  from,
                  to,
                  say_in(from.language),
                  say_in(to.language),
                  first_part(from.language) == first_part(to.language),
                  options.form,
                  filled_in(options.filled),
                  texts_in(from.language),
                  texts_in(to.language)};
  std::vector<Draft> drafts = best_forms(writing);
  const ReadWork read = read_work(composed(pattern.source, drafts), to);
  auto written = std::make_shared<Written::Content>();
  written->language = to.language;
  written->from = from.language;
  written->left = left_of(writing, drafts, Judge(pattern, read, drafts));
  written->refused = refused_of(writing, drafts);
  written->lines = lines_of(pattern, drafts, read.source);
  written->same = fabric::same_work(pattern.fabric, read.fabric).empty();
  return written;
}

Written Pattern::written(const WriteOptions& options) const {
  return Written(written_of(*content_, options));
}

Written::Written(std::shared_ptr<const Content> content) : content_(std::move(content)) {}
const std::string& Written::language() const { return content_->language; }
const std::vector<LeftPassage>& Written::left() const { return content_->left; }
const std::vector<LeftPassage>& Written::refused() const { return content_->refused; }
bool Written::same_work() const { return content_->same; }

std::string Written::text() const {
  std::string text;
  for (const WrittenLine& line : content_->lines) text += line.written + "\n";
  return text;
}

std::string Written::left_table() const {
  std::string table;
  for (const LeftPassage& left : content_->left) table += in_cell(left.text) + "\t\n";
  return table;
}

} // namespace whorl
