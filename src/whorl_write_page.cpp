#include "drawing/xml.hpp"
#include "whorl_content.hpp"

#include <algorithm>

namespace whorl {
namespace {

using Sort = WrittenLine::Sort;

/// A text within HTML, its line ends kept.
std::string for_html(std::string_view text) {
  std::string out;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    if (at > 0) out += "<br>";
    drawing::append_escaped(out, text.substr(at, end - at));
    at = end + 1;
  }
  return out;
}

/// A text within Markdown: what would be a mark there is none.
std::string for_markdown(std::string_view text, bool in_cell) {
  std::string out;
  for (const char c : text) {
    if (std::string_view("\\`*_[]<>#|").find(c) != std::string_view::npos) out += '\\';
    if (in_cell && c == '\n')
      out += "<br>";
    else
      out += c;
  }
  return out;
}

std::string in_element(const char* name, const std::string& text) {
  return std::string("<") + name + ">" + text + "</" + name + ">\n";
}

std::string html_line(const WrittenLine& line) {
  const std::string text = for_html(line.written);
  switch (line.sort) {
  case Sort::title:
    return in_element("h1", text);
  case Sort::heading:
    return in_element("h2", text);
  case Sort::plain:
  case Sort::round:
    return in_element("p", text);
  case Sort::blank:
    break;
  }
  return {};
}

/// The title of the page: the line that is the pattern's.
std::string title_of(const Written::Content& written) {
  for (const WrittenLine& line : written.lines)
    if (line.sort == Sort::title) return line.written;
  return "Whorl";
}

std::string page(const Written::Content& written, const std::string& body) {
  return "<!DOCTYPE html>\n<html lang=\"" + written.language +
         "\">\n<head>\n<meta charset=\"utf-8\">\n<title>" + for_html(title_of(written)) +
         "</title>\n<style>\nbody { max-width: 44em; margin: 2em auto; padding: 0 1em; line-height: 1.4; "
         "font-family: serif; }\np { margin: 0.2em 0; }\nh2 { margin: 1.4em 0 0.4em; }\ntable { "
         "border-collapse: "
         "collapse; width: 100%; }\ntd, th { width: 50%; padding: 0.2em 0.6em; text-align: left; "
         "vertical-align: top; "
         "border-bottom: 1px solid #ccc; }\n</style>\n</head>\n<body>\n" +
         body + "</body>\n</html>\n";
}

/// The words over a column, in the language that its lines are in.
std::string over_column(const char* id, const std::string& language) {
  return drawing::say(wording_for(language), id);
}

} // namespace

std::string Written::markdown() const {
  std::string text;
  for (const WrittenLine& line : content_->lines) {
    const char* const mark = line.sort == Sort::title ? "# " : line.sort == Sort::heading ? "## " : "";
    // Two blanks at the end keep a line a line of its own.
    const bool paragraph = line.sort == Sort::plain || line.sort == Sort::round;
    text += mark + for_markdown(line.written, false) + (paragraph ? "  \n" : "\n");
    if (line.sort == Sort::title || line.sort == Sort::heading) text += "\n";
  }
  return text;
}

std::string Written::html() const {
  std::string body;
  for (const WrittenLine& line : content_->lines) body += html_line(line);
  return page(*content_, body);
}

std::string Written::markdown_side_by_side() const {
  std::string text = "| " + content_->from + " | " + content_->language + " |\n| --- | --- |\n";
  for (const WrittenLine& line : content_->lines)
    if (line.sort != Sort::blank || !line.typed.empty())
      text += "| " + for_markdown(line.typed, true) + " | " + for_markdown(line.written, true) + " |\n";
  return text;
}

std::string Written::html_side_by_side() const {
  const auto cell = [](const char* name, const std::string& language, const std::string& text) {
    return std::string("<") + name + " lang=\"" + language + "\">" + for_html(text) + "</" + name + ">";
  };
  const Content& c = *content_;
  std::string rows = "<tr>" + cell("th", c.from, over_column("write-typed", c.from)) +
                     cell("th", c.language, over_column("write-written", c.language)) + "</tr>\n";
  for (const WrittenLine& line : c.lines)
    if (line.sort != Sort::blank || !line.typed.empty())
      rows += "<tr>" + cell("td", c.from, line.typed) + cell("td", c.language, line.written) + "</tr>\n";
  return page(c, "<table>\n" + rows + "</table>\n");
}

} // namespace whorl
