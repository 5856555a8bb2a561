#include "paint/png_coding.hpp"

#include <png.h>
#include <zlib.h>

#include <algorithm>
#include <cmath>
#include <csetjmp>
#include <cstring>

namespace whorl::paint {
namespace {

constexpr double metres_per_inch = 0.0254;

/// Measured on a chart of 1000 stitches, 1600 dots wide: rows as they are take a quarter less than their
/// differences to the row above (0.63 against 0.84 MB), and more effort than 3 doubles the time for a
/// twentieth of the size. On charts of 30 000 stitches, 4000 dots wide, 2 takes a sixth less time than 3 for
/// a fiftieth more size, and 1 hardly less for a twentieth more.
constexpr int effort = 2;
/// The two bytes in front of packed data (RFC 1950): a window of 32 kB, little effort.
constexpr std::string_view zlib_head = "\x78\x5E";

/// Cairo keeps colours multiplied by how much they cover, a PNG keeps them as they are.
std::uint32_t as_png_keeps_it(std::uint32_t dot) {
  const std::uint32_t covers = dot >> 24;
  if (covers == 0 || covers == 255) return covers == 0 ? 0 : dot;
  std::uint32_t straight = covers << 24;
  for (const int shift : {16, 8, 0}) {
    const std::uint32_t color = ((dot >> shift & 0xFF) * 255 + covers / 2) / covers;
    straight |= std::min<std::uint32_t>(color, 255) << shift;
  }
  return straight;
}

bool is_clear(cairo_surface_t* surface) {
  return cairo_image_surface_get_format(surface) == CAIRO_FORMAT_ARGB32;
}

/// Writes the dots of a row behind the byte that says how they are told (as they are) and gives back where
/// the next row begins. Cairo keeps a dot as one number, xRGB or ARGB.
char* tell_row(const unsigned char* row, std::size_t width, bool clear, char* out) {
  *out++ = 0;
  for (std::size_t i = 0; i < width; ++i) {
    std::uint32_t dot;
    std::memcpy(&dot, row + 4 * i, sizeof dot);
    if (clear) dot = as_png_keeps_it(dot);
    *out++ = static_cast<char>(dot >> 16 & 0xFF);
    *out++ = static_cast<char>(dot >> 8 & 0xFF);
    *out++ = static_cast<char>(dot & 0xFF);
    if (clear) *out++ = static_cast<char>(dot >> 24);
  }
  return out;
}

std::string rows_of(cairo_surface_t* surface) {
  const auto width = static_cast<std::size_t>(cairo_image_surface_get_width(surface));
  const int height = cairo_image_surface_get_height(surface);
  const bool clear = is_clear(surface);
  std::string rows(static_cast<std::size_t>(height) * (1 + width * (clear ? 4 : 3)), '\0');
  const unsigned char* row = cairo_image_surface_get_data(surface);
  char* out = rows.data();
  for (int i = 0; i < height; ++i, row += cairo_image_surface_get_stride(surface))
    out = tell_row(row, width, clear, out);
  return rows;
}

void append(png_structp png, png_bytep bytes, png_size_t count) {
  static_cast<std::string*>(png_get_io_ptr(png))->append(reinterpret_cast<const char*>(bytes), count);
}

void keep_silent(png_structp, png_const_charp) {}

void write_head(png_structp png, png_infop info, const Head& head) {
  const auto dots_per_metre = static_cast<png_uint_32>(std::lround(head.dots_per_inch / metres_per_inch));
  png_set_IHDR(png, info, head.width, head.height, 8, head.clear ? PNG_COLOR_TYPE_RGBA : PNG_COLOR_TYPE_RGB,
               PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
  png_set_pHYs(png, info, dots_per_metre, dots_per_metre, PNG_RESOLUTION_METER);
  png_write_info(png, info);
}

void write_chunk(png_structp png, const char* name, const std::string& bytes) {
  png_write_chunk(png, reinterpret_cast<png_const_bytep>(name),
                  reinterpret_cast<png_const_bytep>(bytes.data()), bytes.size());
}

/// libpng leaves by longjmp when it fails, so nothing in here may need a destructor.
bool write(png_structp png, png_infop info, const Head& head, const std::vector<Packed>& stripes) {
  if (setjmp(png_jmpbuf(png))) return false;
  write_head(png, info, head);
  for (std::size_t i = 0; i < stripes.size(); ++i) write_chunk(png, "IDAT", stripes[i].bytes);
  png_write_chunk(png, reinterpret_cast<png_const_bytep>("IEND"), nullptr, 0);
  return true;
}

/// The four bytes behind packed data, which prove all of it.
std::string check_of(const std::vector<Packed>& stripes) {
  uLong check = 1;
  for (const Packed& stripe : stripes)
    check = adler32_combine(check, stripe.check, static_cast<z_off_t>(stripe.unpacked));
  std::string bytes;
  for (const int shift : {24, 16, 8, 0}) bytes.push_back(static_cast<char>(check >> shift & 0xFF));
  return bytes;
}

} // namespace

Packed pack(cairo_surface_t* surface, bool last) {
  constexpr int no_head = -15, usual_memory = 8;
  std::string rows = rows_of(surface);
  Packed packed;
  packed.unpacked = rows.size();
  packed.check = static_cast<std::uint32_t>(
      adler32(1, reinterpret_cast<const Bytef*>(rows.data()), static_cast<uInt>(rows.size())));
  z_stream stream{};
  if (deflateInit2(&stream, effort, Z_DEFLATED, no_head, usual_memory, Z_DEFAULT_STRATEGY) != Z_OK)
    return packed;
  constexpr uLong room_for_flush = 16;
  packed.bytes.resize(deflateBound(&stream, static_cast<uLong>(rows.size())) + room_for_flush);
  stream.next_in = reinterpret_cast<Bytef*>(rows.data());
  stream.avail_in = static_cast<uInt>(rows.size());
  stream.next_out = reinterpret_cast<Bytef*>(packed.bytes.data());
  stream.avail_out = static_cast<uInt>(packed.bytes.size());
  const int came = deflate(&stream, last ? Z_FINISH : Z_FULL_FLUSH);
  const bool whole = stream.avail_in == 0 && came == (last ? Z_STREAM_END : Z_OK);
  packed.bytes.resize(whole ? stream.total_out : 0);
  deflateEnd(&stream);
  return packed;
}

std::string coded_as_png(const Head& head, std::vector<Packed> stripes) {
  const bool failed =
      std::any_of(stripes.begin(), stripes.end(), [](const Packed& stripe) { return stripe.bytes.empty(); });
  if (failed || stripes.empty()) return {};
  stripes.front().bytes.insert(0, zlib_head);
  stripes.back().bytes += check_of(stripes);
  std::string bytes;
  png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, nullptr, nullptr, keep_silent);
  png_infop info = png_create_info_struct(png);
  png_set_write_fn(png, &bytes, append, nullptr);
  const bool whole = write(png, info, head, stripes);
  png_destroy_write_struct(&png, &info);
  return whole ? bytes : std::string{};
}

} // namespace whorl::paint
