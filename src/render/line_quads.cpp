#include "render/line_quads.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace gangway::render {

namespace {

constexpr float kBorder_px = 2.5f; ///< round the line, for its pale edge

struct Piece {
    glm::vec3 from{0};
    glm::vec3 to{0};
};

/// A polyline as its straight pieces, or as the dashes along it.
std::vector<Piece> piecesOf(const Line& line) {
    std::vector<Piece> pieces;
    float along = 0; // into the present dash and its gap
    for (std::size_t i = 0; i + 1 < line.points_m.size(); ++i) {
        const glm::vec3 from = line.points_m[i];
        const glm::vec3 way = line.points_m[i + 1] - from;
        const float length = glm::length(way);
        if (length < 1e-5f) continue;
        if (line.dash_m <= 0) {
            pieces.push_back({from, from + way});
            continue;
        }
        const float period = 1.5f * line.dash_m;
        for (float at = -along; at < length; at += period) {
            const float begin = std::max(at, 0.0f);
            const float end = std::min(at + line.dash_m, length);
            if (begin < end) pieces.push_back({from + way * (begin / length), from + way * (end / length)});
        }
        along = std::fmod(along + length, period);
    }
    return pieces;
}

/// Takes off what lies nearer than the near plane; false when nothing is left.
bool clipNear(glm::vec4& a, glm::vec4& b) {
    const float in_a = a.z + a.w;
    const float in_b = b.z + b.w;
    if (in_a <= 0 && in_b <= 0) return false;
    if (in_a < 0) a += (b - a) * (in_a / (in_a - in_b) * 0.999f);
    if (in_b < 0) b += (a - b) * (in_b / (in_b - in_a) * 0.999f);
    return a.w > 1e-5f && b.w > 1e-5f;
}

void addPiece(std::vector<LineCorner>& corners, const Piece& piece, const Lens& lens, glm::vec2 size,
              glm::vec4 look) {
    glm::vec4 a = lens.view_projection * glm::vec4(piece.from, 1);
    glm::vec4 b = lens.view_projection * glm::vec4(piece.to, 1);
    if (!clipNear(a, b)) return;
    const glm::vec3 from = glm::vec3(a) / a.w;
    const glm::vec3 to = glm::vec3(b) / b.w;
    const auto pixels = [size](glm::vec3 ndc) { return (glm::vec2(ndc) * 0.5f + 0.5f) * size; };
    const glm::vec2 p = pixels(from);
    const glm::vec2 q = pixels(to);
    const glm::vec2 way = glm::length(q - p) > 1e-3f ? glm::normalize(q - p) : glm::vec2(1, 0);
    const glm::vec2 along = way * (look.w + kBorder_px);
    const glm::vec2 across(-along.y, along.x);
    const auto corner = [&](glm::vec2 at, float depth) {
        return LineCorner{glm::vec3(at / size * 2.0f - 1.0f, depth), glm::vec4(p, q), look};
    };
    const std::array<LineCorner, 4> four{corner(p - along - across, from.z),
                                         corner(p - along + across, from.z), corner(q + along - across, to.z),
                                         corner(q + along + across, to.z)};
    for (const std::size_t i : {0U, 1U, 2U, 2U, 1U, 3U})
        corners.push_back(four[i]);
}

} // namespace

std::vector<LineCorner> lineCorners(const std::vector<Line>& lines, const Lens& lens, int width, int height) {
    std::vector<LineCorner> corners;
    const glm::vec2 size(static_cast<float>(width), static_cast<float>(height));
    const float scale = std::max(1.0f, size.y / 900.0f);
    for (const Line& line : lines)
        for (const Piece& piece : piecesOf(line))
            addPiece(corners, piece, lens, size, glm::vec4(line.colour, 0.5f * line.width_px * scale));
    return corners;
}

} // namespace gangway::render
