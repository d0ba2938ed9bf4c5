// The words a plan file uses for each choice. Reader, writer and schema test all use these tables.
// Private to src/plan.
#pragma once

#include "plan/plan.hpp"

#include <array>
#include <string_view>

namespace gangway::plan::words {

template <class E>
struct Word {
    std::string_view text;
    E value;
};

inline constexpr std::array<Word<DisplayUnits>, 4> kUnits{{{"mm", DisplayUnits::Millimetres},
                                                           {"cm", DisplayUnits::Centimetres},
                                                           {"m", DisplayUnits::Metres},
                                                           {"ft-in", DisplayUnits::FeetInches}}};
inline constexpr std::array<Word<Visibility>, 3> kVisibility{
    {{"shown", Visibility::Shown}, {"ghosted", Visibility::Ghosted}, {"hidden", Visibility::Hidden}}};
inline constexpr std::array<Word<WallLine::Kind>, 6> kWallLine{{{"skirting", WallLine::Kind::Skirting},
                                                                {"dado", WallLine::Kind::Dado},
                                                                {"picture-rail", WallLine::Kind::PictureRail},
                                                                {"cornice", WallLine::Kind::Cornice},
                                                                {"panel", WallLine::Kind::Panel},
                                                                {"tiles", WallLine::Kind::Tiles}}};
inline constexpr std::array<Word<WallStructure>, 6> kStructure{{{"unknown", WallStructure::Unknown},
                                                                {"masonry", WallStructure::Masonry},
                                                                {"stud", WallStructure::Stud},
                                                                {"concrete", WallStructure::Concrete},
                                                                {"timber", WallStructure::Timber},
                                                                {"none", WallStructure::None}}};
inline constexpr std::array<Word<WallDuty>, 3> kDuty{
    {{"none", WallDuty::None}, {"separating", WallDuty::Separating}, {"fire", WallDuty::Fire}}};
inline constexpr std::array<Word<Feed>, 5> kFeed{{{"unstated", Feed::Unstated},
                                                  {"above", Feed::Above},
                                                  {"below", Feed::Below},
                                                  {"left", Feed::Left},
                                                  {"right", Feed::Right}}};
inline constexpr std::array<Word<Opening::Kind>, 7> kOpening{{{"hinged-door", Opening::Kind::HingedDoor},
                                                              {"pocket-door", Opening::Kind::PocketDoor},
                                                              {"sliding-door", Opening::Kind::SlidingDoor},
                                                              {"barn-door", Opening::Kind::BarnDoor},
                                                              {"window", Opening::Kind::Window},
                                                              {"plain", Opening::Kind::Plain},
                                                              {"hatch", Opening::Kind::Hatch}}};
inline constexpr std::array<Word<Side>, 2> kSide{{{"left", Side::Left}, {"right", Side::Right}}};
inline constexpr std::array<Word<Swing>, 2> kSwing{{{"in", Swing::In}, {"out", Swing::Out}}};
inline constexpr std::array<Word<Direction>, 2> kDirection{
    {{"horizontal", Direction::Horizontal}, {"vertical", Direction::Vertical}}};
inline constexpr std::array<Word<KeptDistance::From>, 6> kKeptFrom{
    {{"left-corner", KeptDistance::From::LeftCorner},
     {"right-corner", KeptDistance::From::RightCorner},
     {"floor", KeptDistance::From::Floor},
     {"opening", KeptDistance::From::Opening},
     {"furniture", KeptDistance::From::Furniture},
     {"plate", KeptDistance::From::Plate}}};
inline constexpr std::array<Word<KeptDistance::Edge>, 5> kKeptEdge{{{"left", KeptDistance::Edge::Left},
                                                                    {"right", KeptDistance::Edge::Right},
                                                                    {"top", KeptDistance::Edge::Top},
                                                                    {"bottom", KeptDistance::Edge::Bottom},
                                                                    {"centre", KeptDistance::Edge::Centre}}};
inline constexpr std::array<Word<UseRate>, 4> kUse{{{"daily", UseRate::Daily},
                                                    {"weekly", UseRate::Weekly},
                                                    {"left-plugged", UseRate::LeftPlugged},
                                                    {"once", UseRate::Once}}};
inline constexpr std::array<Word<Sight>, 3> kSight{
    {{"any", Sight::Any}, {"keep-hidden", Sight::KeepHidden}, {"keep-in-reach", Sight::KeepInReach}}};
inline constexpr std::array<Word<Device::Plug>, 3> kPlug{{{"straight", Device::Plug::Straight},
                                                          {"flat", Device::Plug::Flat},
                                                          {"power-block", Device::Plug::PowerBlock}}};
inline constexpr std::array<Word<Luminaire::Kind>, 8> kLuminaire{{{"ceiling", Luminaire::Kind::Ceiling},
                                                                  {"wall", Luminaire::Kind::Wall},
                                                                  {"pendant", Luminaire::Kind::Pendant},
                                                                  {"recessed", Luminaire::Kind::Recessed},
                                                                  {"linear", Luminaire::Kind::Linear},
                                                                  {"under-unit", Luminaire::Kind::UnderUnit},
                                                                  {"floor", Luminaire::Kind::Floor},
                                                                  {"table", Luminaire::Kind::Table}}};
inline constexpr std::array<Word<Luminaire::PlanLook>, 3> kPlanLook{
    {{"as-sheet", Luminaire::PlanLook::AsSheet},
     {"symbol", Luminaire::PlanLook::Symbol},
     {"top-view", Luminaire::PlanLook::TopView}}};
inline constexpr std::array<Word<SwitchLeg::Line>, 5> kLegLine{{{"auto", SwitchLeg::Line::Auto},
                                                                {"arc", SwitchLeg::Line::Arc},
                                                                {"straight", SwitchLeg::Line::Straight},
                                                                {"orthogonal", SwitchLeg::Line::Orthogonal},
                                                                {"letters", SwitchLeg::Line::Letters}}};
inline constexpr std::array<Word<Circuit::Kind>, 4> kCircuit{{{"lighting", Circuit::Kind::Lighting},
                                                              {"sockets", Circuit::Kind::Sockets},
                                                              {"appliance", Circuit::Kind::Appliance},
                                                              {"motor", Circuit::Kind::Motor}}};
inline constexpr std::array<Word<RoomUse>, 13> kRoomUse{{{"unstated", RoomUse::Unstated},
                                                         {"living", RoomUse::Living},
                                                         {"dining", RoomUse::Dining},
                                                         {"kitchen", RoomUse::Kitchen},
                                                         {"bedroom", RoomUse::Bedroom},
                                                         {"child", RoomUse::Child},
                                                         {"study", RoomUse::Study},
                                                         {"bathroom", RoomUse::Bathroom},
                                                         {"toilet", RoomUse::Toilet},
                                                         {"hall", RoomUse::Hall},
                                                         {"stair", RoomUse::Stair},
                                                         {"utility", RoomUse::Utility},
                                                         {"store", RoomUse::Store}}};
inline constexpr std::array<Word<Agreement::Answer>, 2> kAnswer{
    {{"agree", Agreement::Answer::Agree}, {"query", Agreement::Answer::Query}}};
inline constexpr std::array<Word<Issue::Level>, 3> kIssueLevel{
    {{"ffl", Issue::Level::Ffl}, {"sfl", Issue::Level::Slab}, {"site", Issue::Level::Site}}};
inline constexpr std::array<Word<Issue::Face>, 2> kIssueFace{
    {{"finished", Issue::Face::Finished}, {"structural", Issue::Face::Structural}}};

/// Choices the plan keeps as text.
inline constexpr std::array<std::string_view, 4> kFloorFinish{"boards", "tiles", "carpet", "screed"};
inline constexpr std::array<std::string_view, 6> kFace{"front", "back", "left", "right", "top", "bottom"};

} // namespace gangway::plan::words
