#include "drawing/mark_file.hpp"

#include "drawing/literal.hpp"
#include "drawing/number.hpp"

#include <pugixml.hpp>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>

namespace whorl::drawing {
namespace {

constexpr double units_per_w = 100;

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_gap(char c) { return c == ' ' || c == ',' || c == '\t' || c == '\n' || c == '\r'; }

/// Reads the numbers and letters of path data and of transforms, without a locale.
class Scanner {
public:
  explicit Scanner(std::string_view text) : text_(text) {}

  bool done() {
    while (at_ < text_.size() && is_gap(text_[at_])) ++at_;
    return at_ == text_.size();
  }
  bool number_follows() {
    return !done() && (is_digit(text_[at_]) || text_[at_] == '-' || text_[at_] == '+' || text_[at_] == '.');
  }
  char letter() { return done() ? '\0' : text_[at_++]; }
  bool take(std::string_view word) {
    if (done() || text_.substr(at_, word.size()) != word) return false;
    at_ += word.size();
    return true;
  }
  double number() {
    if (!number_follows()) return fail();
    const bool negative = text_[at_] == '-';
    if (negative || text_[at_] == '+') ++at_;
    double digits = 0;
    int places = 0, seen = 0;
    for (; at_ < text_.size() && is_digit(text_[at_]); ++at_, ++seen)
      digits = 10 * digits + (text_[at_] - '0');
    if (at_ < text_.size() && text_[at_] == '.')
      for (++at_; at_ < text_.size() && is_digit(text_[at_]); ++at_, ++seen, ++places)
        digits = 10 * digits + (text_[at_] - '0');
    if (seen == 0) return fail();
    places -= exponent();
    for (; places > 0; --places) digits /= 10;
    for (; places < 0; ++places) digits *= 10;
    return negative ? -digits : digits;
  }
  bool failed() const { return failed_; }

private:
  double fail() {
    failed_ = true;
    at_ = text_.size();
    return 0;
  }
  int exponent() {
    if (at_ + 1 >= text_.size() || (text_[at_] != 'e' && text_[at_] != 'E')) return 0;
    std::size_t next = at_ + 1;
    const bool negative = text_[next] == '-';
    if (negative || text_[next] == '+') ++next;
    if (next >= text_.size() || !is_digit(text_[next])) return 0;
    int value = 0;
    for (; next < text_.size() && is_digit(text_[next]); ++next)
      value = std::min(99, 10 * value + (text_[next] - '0'));
    at_ = next;
    return negative ? -value : value;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  bool failed_ = false;
};

/// Follows path data; every command becomes moves, lines and cubic curves.
class PathReader {
public:
  explicit PathReader(std::string_view data) : scan_(data) {}

  bool read() {
    while (!scan_.done() && !scan_.failed()) {
      if (!scan_.number_follows())
        command_ = scan_.letter();
      else if (command_ == 'M')
        command_ = 'L';
      else if (command_ == 'm')
        command_ = 'l';
      else if (command_ == 'z' || command_ == 'Z')
        return false;
      if (!follow()) return false;
    }
    return !scan_.failed() && !path_.verbs.empty() && path_.verbs[0] == Verb::move;
  }
  const Path& path() const { return path_; }

private:
  bool relative() const { return command_ >= 'a'; }
  Point point() {
    const double x = scan_.number(), y = scan_.number();
    return relative() ? here_ + Point{x, y} : Point{x, y};
  }
  void add(Verb verb, std::initializer_list<Point> points) {
    path_.verbs.push_back(verb);
    path_.points.insert(path_.points.end(), points);
    if (points.size() > 0) here_ = *(points.end() - 1);
  }
  void line_to(Point to) { add(Verb::line, {to}); }
  void curve_to(Point a, Point b, Point to) {
    add(Verb::curve, {a, b, to});
    handle_ = b;
  }
  void quadratic_to(Point a, Point to) {
    const Point from = here_;
    add(Verb::curve, {(1.0 / 3) * from + (2.0 / 3) * a, (2.0 / 3) * a + (1.0 / 3) * to, to});
    handle_ = a;
  }
  Point mirrored(std::string_view after) const {
    return after.find(last_) == std::string_view::npos ? here_ : 2 * here_ - handle_;
  }
  bool follow() {
    const char upper = relative() ? static_cast<char>(command_ - 'a' + 'A') : command_;
    const Point from = relative() ? here_ : Point{};
    switch (upper) {
    case 'M':
      add(Verb::move, {point()});
      start_ = here_;
      break;
    case 'L':
      line_to(point());
      break;
    case 'H':
      line_to({from.x + scan_.number(), here_.y});
      break;
    case 'V':
      line_to({here_.x, from.y + scan_.number()});
      break;
    case 'C': {
      const Point a = point(), b = point(), to = point();
      curve_to(a, b, to);
      break;
    }
    case 'S': {
      const Point a = mirrored("CS"), b = point(), to = point();
      curve_to(a, b, to);
      break;
    }
    case 'Q': {
      const Point a = point(), to = point();
      quadratic_to(a, to);
      break;
    }
    case 'T': {
      const Point a = mirrored("QT"), to = point();
      quadratic_to(a, to);
      break;
    }
    case 'Z':
      add(Verb::close, {});
      here_ = start_;
      break;
    default:
      return false;
    }
    last_ = upper;
    return true;
  }

  Scanner scan_;
  Path path_;
  Point here_, start_, handle_;
  char command_ = 'M';
  char last_ = '\0';
};

/// (x, y) goes to (a x + c y + e, b x + d y + f).
struct Matrix {
  double a = 1, b = 0, c = 0, d = 1, e = 0, f = 0;
};

Point operator*(const Matrix& m, Point p) {
  return {m.a * p.x + m.c * p.y + m.e, m.b * p.x + m.d * p.y + m.f};
}

Matrix operator*(const Matrix& m, const Matrix& n) {
  return {m.a * n.a + m.c * n.b, m.b * n.a + m.d * n.b,       m.a * n.c + m.c * n.d,
          m.b * n.c + m.d * n.d, m.a * n.e + m.c * n.f + m.e, m.b * n.e + m.d * n.f + m.f};
}

std::vector<double> arguments(Scanner& scan) {
  std::vector<double> values;
  if (!scan.take("(")) return values;
  while (scan.number_follows()) values.push_back(scan.number());
  return scan.take(")") ? values : std::vector<double>{};
}

bool read_transform(std::string_view text, Matrix& matrix) {
  Scanner scan(text);
  while (!scan.done()) {
    const bool moves = scan.take("translate"), scales = !moves && scan.take("scale");
    if (!moves && !scales && !scan.take("matrix")) return false;
    std::vector<double> v = arguments(scan);
    if (v.size() == 1 && !(moves || scales)) return false;
    if (v.size() == 1) v.push_back(moves ? 0 : v[0]);
    if (v.size() != (moves || scales ? 2U : 6U)) return false;
    if (moves)
      matrix = matrix * Matrix{1, 0, 0, 1, v[0], v[1]};
    else if (scales)
      matrix = matrix * Matrix{v[0], 0, 0, v[1], 0, 0};
    else
      matrix = matrix * Matrix{v[0], v[1], v[2], v[3], v[4], v[5]};
  }
  return !scan.failed();
}

/// What a group hands down to what is in it.
struct Look {
  Matrix matrix;
  std::string fill = "black", stroke = "none", width = "1", dash = "none";
};

/// A property, from the attribute or, as vector editors save it, from `style`.
void inherit(const pugi::xml_node& node, const char* name, std::string& value) {
  if (const auto attribute = node.attribute(name)) value = attribute.value();
  const std::string style = std::string(";") + node.attribute("style").value() + ";";
  const std::string key = std::string(";") + name + ":";
  const std::size_t at = style.find(key);
  if (at != std::string::npos)
    value = style.substr(at + key.size(), style.find(';', at + 1) - at - key.size());
}

double first_number(const std::string& text) {
  Scanner scan(text);
  return scan.number_follows() ? scan.number() : 0;
}

/// Rounded to a millionth, so that a mark is the same whether built in or read from its file.
double in_w(double units) { return std::round(units / units_per_w * 1e6) / 1e6; }

class MarkReader {
public:
  explicit MarkReader(MarkReading& reading) : reading_(reading) {}

  void read_children(const pugi::xml_node& parent, const Look& look, bool anchors) {
    for (const pugi::xml_node& node : parent.children())
      if (node.type() == pugi::node_element) read(node, look, anchors);
  }

private:
  void read(const pugi::xml_node& node, Look look, bool anchors) {
    const std::string_view tag = node.name();
    const bool is_note = tag == "title" || tag == "desc" || tag == "metadata" || tag == "defs";
    if (is_note || tag.find(':') != std::string_view::npos) return;
    if (!read_transform(node.attribute("transform").value(), look.matrix))
      return complain("its transforms may be translate, scale and matrix only");
    inherit(node, "fill", look.fill);
    inherit(node, "stroke", look.stroke);
    inherit(node, "stroke-width", look.width);
    inherit(node, "stroke-dasharray", look.dash);
    if (tag == "g")
      return read_children(node, look,
                           anchors || std::string_view(node.attribute("id").value()) == "anchors");
    if (tag == "circle" && anchors) return read_anchor(node, look);
    if (tag != "path") return complain("it holds <" + std::string(tag) + ">; turn it into a path");
    read_path(node, look);
  }

  void read_anchor(const pugi::xml_node& node, const Look& look) {
    const Point at{first_number(node.attribute("cx").value()), first_number(node.attribute("cy").value())};
    reading_.mark.anchors.emplace_back(node.attribute("id").value(), placed(look, at));
  }

  void read_path(const pugi::xml_node& node, const Look& look) {
    PathReader reader(node.attribute("d").value());
    if (!reader.read()) return complain("a path is broken or holds elliptical arcs; turn them into curves");
    Pen pen{reader.path(), 0, 0};
    for (Point& point : pen.path.points) point = placed(look, point);
    if (look.fill != "none") reading_.mark.pens.push_back(pen);
    if (look.stroke == "none") return;
    const Matrix& m = look.matrix;
    const double scale = std::sqrt(std::abs(m.a * m.d - m.b * m.c));
    pen.stroke = in_w(scale * first_number(look.width));
    pen.dash = in_w(scale * first_number(look.dash));
    reading_.mark.pens.push_back(pen);
  }

  static Point placed(const Look& look, Point at) {
    at = look.matrix * at;
    return {in_w(at.x), 0.0 - in_w(at.y)};
  }

  void complain(const std::string& problem) {
    if (reading_.problem.empty()) reading_.problem = problem;
  }

  MarkReading& reading_;
};

void append_value(std::string& out, double value) { append_decimal(out, std::llround(value * 1e6), 6); }

void append_point(std::string& out, Point point) {
  out += '{';
  append_value(out, point.x);
  out += ", ";
  append_value(out, point.y);
  out += '}';
}

void append_pen(std::string& out, const Pen& pen) {
  static constexpr const char* names[] = {"Verb::move", "Verb::line", "Verb::curve", "Verb::close"};
  out += "{{{";
  for (const Verb verb : pen.path.verbs) out += std::string(names[static_cast<int>(verb)]) + ", ";
  out += "},\n      {";
  for (const Point point : pen.path.points) append_point(out, point), out += ", ";
  out += "}}, ";
  append_value(out, pen.stroke);
  out += ", ";
  append_value(out, pen.dash);
  out += '}';
}

void append_mark(std::string& out, const Mark& mark) {
  out += "    {";
  append_quoted(out, mark.name);
  out += ", {";
  for (const Pen& pen : mark.pens) append_pen(out, pen), out += ", ";
  out += "}, {";
  for (const auto& [name, point] : mark.anchors) {
    out += '{';
    append_quoted(out, name);
    out += ", ";
    append_point(out, point);
    out += "}, ";
  }
  out += "}},\n";
}

std::string read_file(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

std::string stem_of(const std::string& path) {
  const std::size_t slash = path.find_last_of("/\\");
  const std::string name = slash == std::string::npos ? path : path.substr(slash + 1);
  return name.substr(0, name.find_last_of('.'));
}

} // namespace

MarkReading read_mark(std::string name, std::string_view svg) {
  MarkReading reading;
  reading.mark.name = std::move(name);
  pugi::xml_document document;
  if (!document.load_buffer(svg.data(), svg.size()) || !document.child("svg")) {
    reading.problem = "it is no SVG";
    return reading;
  }
  MarkReader(reading).read_children(document.child("svg"), Look{}, false);
  if (reading.problem.empty() && reading.mark.pens.empty()) reading.problem = "it draws nothing";
  return reading;
}

std::string mark_table(std::vector<Mark> marks) {
  std::sort(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) { return a.name < b.name; });
  std::string out = "// Made from symbols/*.svg while building.\n#include \"drawing/marks.hpp\"\n\n"
                    "namespace whorl::drawing {\n\nconst std::vector<Mark>& built_in_marks() {\n"
                    "  static const std::vector<Mark> marks{\n";
  for (const Mark& mark : marks) append_mark(out, mark);
  return out + "  };\n  return marks;\n}\n\n} // namespace whorl::drawing\n";
}

int write_mark_table(const std::string& out, const std::vector<std::string>& files) {
  std::vector<Mark> marks;
  for (const std::string& file : files) {
    MarkReading reading = read_mark(stem_of(file), read_file(file));
    if (!reading.problem.empty()) {
      std::cerr << file << ": " << reading.problem << '\n';
      return EXIT_FAILURE;
    }
    marks.push_back(std::move(reading.mark));
  }
  std::ofstream(out, std::ios::binary) << mark_table(std::move(marks));
  return EXIT_SUCCESS;
}

} // namespace whorl::drawing
