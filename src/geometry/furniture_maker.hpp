// How one piece of furniture is put together; nobody outside geometry/ includes it.
#pragma once

#include "geometry/furniture.hpp"
#include "geometry/shapes.hpp"

#include <string_view>

namespace gangway::geometry {

/// Colours of the furniture, warm and quiet so that plates stand out.
namespace tone {
inline constexpr const char* kWhite = "#F1EDE4";
inline constexpr const char* kPanel = "#E4DED2";
inline constexpr const char* kOak = "#C9A97C";
inline constexpr const char* kDarkOak = "#9A7450";
inline constexpr const char* kFabric = "#A7A79F";
inline constexpr const char* kFabricDark = "#7E858A";
inline constexpr const char* kLinen = "#F4F0E8";
inline constexpr const char* kSteel = "#B9BBBA";
inline constexpr const char* kBlack = "#2C2E30";
inline constexpr const char* kCeramic = "#F8F7F3";
inline constexpr const char* kStone = "#CFC9BD";
inline constexpr const char* kGlass = "#CFDFE2";
inline constexpr const char* kLeafGreen = "#6E8B5E";
inline constexpr const char* kClay = "#B07A5B";
} // namespace tone

/// A box in a piece's own coordinates: x right, y to the back, z up.
struct Block {
    Vec3 low;
    Vec3 high;
};

/// Collects solids in a piece's own coordinates and puts them where the piece stands.
class Maker {
public:
    using Surface = Solid::Surface;

    Maker(const plan::Furniture& piece, std::vector<Solid>& solids) : piece_(piece), solids_(solids) {}

    double width() const { return piece_.size.width_mm; }
    double depth() const { return piece_.size.depth_mm; }
    double height() const { return piece_.size.height_mm; }
    double left() const { return -width() / 2; }
    double right() const { return width() / 2; }
    double front() const { return -depth() / 2; }
    double back() const { return depth() / 2; }
    /// The whole piece, or a part of its height.
    Block whole() const { return {{left(), front(), 0}, {right(), back(), height()}}; }

    double value(std::string_view key) const;
    int count(std::string_view key) const;
    bool flag(std::string_view key) const { return value(key) >= 0.5; }

    /// The piece's own colour where the plan gives one, else the kind's.
    std::string main(const char* usual) const { return piece_.colour.empty() ? usual : piece_.colour; }

    void add(std::string name, std::string colour, Surface surface, const meshes::Mesh& local);
    /// A bevelled board or box; left out when it would be thinner than a tenth of a millimetre.
    void board(std::string name, std::string colour, Surface surface, Block block, double bevel_mm = 2);
    void pad(std::string name, std::string colour, Block block, double radius_mm,
             Surface surface = Surface::Fabric);
    void rod(std::string name, std::string colour, Surface surface, Vec3 from, Vec3 to, double radius_mm,
             int sides = 14);

private:
    const plan::Furniture& piece_;
    std::vector<Solid>& solids_;
};

/// Makes one kind.
using MakeKind = void (*)(Maker&);

// By file: storage, kitchen, tables and seats, beds, bath, soft furnishings, the rest.
MakeKind storageKind(std::string_view kind);
MakeKind kitchenKind(std::string_view kind);
MakeKind tableKind(std::string_view kind);
MakeKind seatKind(std::string_view kind);
MakeKind bedKind(std::string_view kind);
MakeKind bathKind(std::string_view kind);
MakeKind softKind(std::string_view kind);
MakeKind otherKind(std::string_view kind);

/// Looks a kind up in one file's table; nullptr when it is not there.
struct KindEntry {
    std::string_view kind;
    MakeKind make;
};
MakeKind findKind(std::span<const KindEntry> table, std::string_view kind);

// Joinery that several kinds share.

inline constexpr double kBoardMm = 18; ///< common practice, no source
inline constexpr double kDoorMm = 19;
/// From the front of the footprint to the face of a door, so that handles stay within the footprint.
inline constexpr double kHandleRoomMm = 22;
inline constexpr double kFrontDepthMm = kHandleRoomMm + kDoorMm;

/// A case of five boards, open at the front.
void addCase(Maker& maker, Block block, const std::string& colour);
/// Doors side by side on the front of a block (its low y is the case's front edge).
enum class Handles { Bars, None };
void addDoors(Maker& maker, Block block, int doors, const std::string& colour,
              Handles handles = Handles::Bars);
/// Drawers one above the other, each a front with a tray behind it.
void addDrawers(Maker& maker, Block block, int drawers, const std::string& colour, double tray_depth_mm);
/// Plinth set back from the front.
void addPlinth(Maker& maker, Block block, const std::string& colour);
/// Four legs under a block, standing in its corners.
void addLegs(Maker& maker, Block block, double width_mm, const std::string& colour, Maker::Surface surface);
/// A tap standing at a point, its spout reaching `reach_mm` towards the front.
void addTap(Maker& maker, Vec3 foot, double height_mm, double reach_mm);

} // namespace gangway::geometry
