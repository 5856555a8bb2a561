#include "paint/pdf_catalog.hpp"

#include <qpdf/qpdf-c.h>

namespace whorl::paint {
namespace {

/// The C face of libqpdf, because it throws nothing.
struct Document {
  qpdf_data held = qpdf_init();
  Document() = default;
  Document(const Document&) = delete;
  Document& operator=(const Document&) = delete;
  ~Document() { qpdf_cleanup(&held); }
};

bool succeeded(QPDF_ERROR_CODE code) { return (code & QPDF_ERRORS) == 0; }

bool read(qpdf_data document, const std::string& pdf) {
  qpdf_silence_errors(document);
  qpdf_set_suppress_warnings(document, QPDF_TRUE);
  return succeeded(qpdf_read_memory(document, "chart", pdf.data(), pdf.size(), nullptr));
}

void say_language(qpdf_data document, const std::string& language) {
  qpdf_oh_replace_key(document, qpdf_get_root(document), "/Lang",
                      qpdf_oh_new_unicode_string(document, language.c_str()));
}

void show_title(qpdf_data document) {
  const qpdf_oh preferences = qpdf_oh_new_dictionary(document);
  qpdf_oh_replace_key(document, preferences, "/DisplayDocTitle", qpdf_oh_new_bool(document, QPDF_TRUE));
  qpdf_oh_replace_key(document, qpdf_get_root(document), "/ViewerPreferences", preferences);
}

void drop_version_of_cairo(qpdf_data document) {
  const qpdf_oh info = qpdf_oh_get_key(document, qpdf_get_trailer(document), "/Info");
  qpdf_oh_remove_key(document, info, "/Producer");
}

/// Plain objects and the streams as Cairo packed them: the least that can differ from machine to machine.
std::string written(qpdf_data document) {
  if (!succeeded(qpdf_init_write_memory(document))) return {};
  qpdf_set_deterministic_ID(document, QPDF_TRUE);
  qpdf_set_object_stream_mode(document, qpdf_o_disable);
  qpdf_set_stream_data_mode(document, qpdf_s_preserve);
  if (!succeeded(qpdf_write(document))) return {};
  return {reinterpret_cast<const char*>(qpdf_get_buffer(document)), qpdf_get_buffer_length(document)};
}

} // namespace

std::string with_language(const std::string& pdf, const std::string& language) {
  Document document;
  if (!read(document.held, pdf)) return {};
  say_language(document.held, language);
  show_title(document.held);
  drop_version_of_cairo(document.held);
  return written(document.held);
}

} // namespace whorl::paint
