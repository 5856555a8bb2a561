#pragma once

/// Prints what reading costs in every language, the language found out, beside English alone.
void measure_languages();
