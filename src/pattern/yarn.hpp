#pragma once

#include "pattern/tree.hpp"
#include "pattern/way.hpp"

#include <string>

namespace whorl::pattern {

/// The yarn that a few words name: a colour ("dark brown"), or a letter behind a word that leads to one
/// ("change to B", "yarn A", "with MC"); "" if they name none.
std::string yarn_named(std::string_view text, const words::Vocabulary& vocabulary);

/// Whether a short line between the rounds does nothing but name a yarn: "With green:", "colour A".
bool only_names_yarn(std::string_view line, const words::Vocabulary& vocabulary);

/// The number of a yarn in Tree::yarns, which it joins where it is new and the materials list none like it.
/// Where rounds stand before in which no yarn was named, the first is theirs: it is the first of the list
/// that is not changed to, else has no name until "A" or "MC" is told.
std::uint8_t number_of_yarn(Tree& tree, const std::string& name, std::size_t rounds_before);

/// Gives the changes of yarn among the placings from `first` on their numbers, and yarn that is joined. One
/// that stands before the work of the tree's last round is done before that round.
void settle_changes(Tree& tree, std::size_t first, const words::Vocabulary& vocabulary);

/// The brackets or the cell of a label that name a yarn change to it before the tree's last round, as does
/// what stands above a first round: "Join purple in a free loop".
void change_in_label(Tree& tree, Span aside, const Reader& reader);

} // namespace whorl::pattern
