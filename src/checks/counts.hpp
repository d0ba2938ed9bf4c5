// What the rules about numbers and spacing of outlets share. Only for this folder.
#pragma once

#include "checks/rules.hpp"

namespace gangway::checks {

/// What an official text or a trade body asks for is a warning, the rest a hint.
plan::Severity severityBy(catalogue::Grade grade);
plan::Finding aboutRoom(std::string rule, plan::Severity severity, const plan::Room& room);
/// The room's name, else its id.
std::string roomWords(const plan::Room& room);
/// "1 socket", "2 sockets".
std::string plural(int number, const char* one, const char* more);
/// Plugs that a plate takes at once, or its sockets where a double one counts as one.
int outletsOf(const Point& point, bool double_is_one);
/// How high above a worktop a socket still serves it, mm.
double highOverTop(const Facts& facts);

// Families of findCounts.
void findNumbers(const Facts& facts, const plan::Room& room, Findings& findings);
void findSpacings(const Facts& facts, const plan::Room& room, Findings& findings);
/// Neighbours over a worktop.
void findWorktop(const Facts& facts, const plan::Room& room, Findings& findings);

} // namespace gangway::checks
