#include "lighting/ray_world.hpp"

#include "geometry/furniture.hpp"
#include "geometry/walls.hpp"

#include <limits>

#include <embree3/rtcore.h>

namespace gangway::lighting {

namespace {

using plan::Vec3;

constexpr double kClear_mm = 1; ///< off the ends of a ray, more than float leaves at the far end of a house

struct DeviceRelease {
    void operator()(RTCDevice device) const { rtcReleaseDevice(device); }
};
struct SceneRelease {
    void operator()(RTCScene scene) const { rtcReleaseScene(scene); }
};
template <typename Handle, typename Release>
using Owned = std::unique_ptr<std::remove_pointer_t<Handle>, Release>;

RTCRay rayFrom(Vec3 from, Vec3 way, double near, double far) {
    RTCRay ray{};
    ray.org_x = static_cast<float>(from.x);
    ray.org_y = static_cast<float>(from.y);
    ray.org_z = static_cast<float>(from.z);
    ray.dir_x = static_cast<float>(way.x);
    ray.dir_y = static_cast<float>(way.y);
    ray.dir_z = static_cast<float>(way.z);
    ray.tnear = static_cast<float>(near);
    ray.tfar = static_cast<float>(far);
    ray.mask = std::numeric_limits<unsigned>::max();
    return ray;
}

} // namespace

struct RayWorld::Scene {
    // One thread and no change of its affinity: the scenes are small, and the caller may have threads of its
    // own.
    Owned<RTCDevice, DeviceRelease> device{rtcNewDevice("threads=1,set_affinity=0")};
    Owned<RTCScene, SceneRelease> scene{rtcNewScene(device.get())};
    std::vector<const plan::Furniture*> pieces; ///< by geometry number
    Vec3 middle{};                              ///< taken off every point, so that floats stay small

    Scene() { rtcSetSceneFlags(scene.get(), RTC_SCENE_FLAG_ROBUST); }

    void add(const meshes::Mesh& mesh, const plan::Furniture* piece);
    void commit() { rtcCommitScene(scene.get()); }
};

void RayWorld::Scene::add(const meshes::Mesh& mesh, const plan::Furniture* piece) {
    if (mesh.empty()) return;
    if (pieces.empty()) middle = mesh.positions_mm.front();
    const Owned<RTCGeometry, decltype([](RTCGeometry g) { rtcReleaseGeometry(g); })> geometry{
        rtcNewGeometry(device.get(), RTC_GEOMETRY_TYPE_TRIANGLE)};
    auto* corners = static_cast<float*>(rtcSetNewGeometryBuffer(geometry.get(), RTC_BUFFER_TYPE_VERTEX, 0,
                                                                RTC_FORMAT_FLOAT3, 3 * sizeof(float),
                                                                mesh.positions_mm.size()));
    auto* triangles = static_cast<unsigned*>(rtcSetNewGeometryBuffer(geometry.get(), RTC_BUFFER_TYPE_INDEX, 0,
                                                                     RTC_FORMAT_UINT3, 3 * sizeof(unsigned),
                                                                     mesh.triangles.size()));
    for (const Vec3& p : mesh.positions_mm) {
        const Vec3 near = p - middle;
        for (const double value : {near.x, near.y, near.z})
            *corners++ = static_cast<float>(value);
    }
    for (const auto& triangle : mesh.triangles)
        for (const std::uint32_t index : triangle)
            *triangles++ = index;
    rtcCommitGeometry(geometry.get());
    rtcAttachGeometryByID(scene.get(), geometry.get(), static_cast<unsigned>(pieces.size()));
    pieces.push_back(piece);
}

RayWorld::RayWorld(const std::vector<meshes::Mesh>& meshes) : scene_(std::make_unique<Scene>()) {
    for (const meshes::Mesh& mesh : meshes)
        scene_->add(mesh, nullptr);
    scene_->commit();
}

RayWorld::RayWorld(const geometry::HouseIndex& house, const std::string& storey_id,
                   const std::filesystem::path& base)
    : scene_(std::make_unique<Scene>()) {
    for (const plan::Room& room : house.plan().rooms) {
        if (room.storey != storey_id) continue;
        meshes::Mesh fabric;
        for (const geometry::FabricPart& part : geometry::roomFabric(house, room))
            if (part.role != geometry::FabricPart::Role::Glass) meshes::append(fabric, part.mesh);
        scene_->add(fabric, nullptr);
        for (const plan::Furniture* piece : house.furnitureIn(room.id)) {
            if (piece->layer == plan::kLayerSoft) continue;
            meshes::Mesh solid;
            for (const geometry::Solid& part : geometry::furnitureSolids(*piece, base).solids)
                if (part.surface != geometry::Solid::Surface::Glass) meshes::append(solid, part.mesh);
            scene_->add(solid, piece);
        }
    }
    scene_->commit();
}

RayWorld::RayWorld(RayWorld&&) noexcept = default;
RayWorld& RayWorld::operator=(RayWorld&&) noexcept = default;
RayWorld::~RayWorld() = default;

bool RayWorld::blocked(Vec3 from_mm, Vec3 to_mm) const {
    return blocked(from_mm, to_mm, 1 / std::max(length(to_mm - from_mm), kClear_mm));
}

bool RayWorld::blocked(Vec3 from_mm, Vec3 to_mm, double inverse_distance) const {
    const double clear = std::min(kClear_mm * inverse_distance, 0.25);
    RTCRay ray = rayFrom(from_mm - scene_->middle, to_mm - from_mm, clear, 1 - clear);
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    rtcOccluded1(scene_->scene.get(), &context, &ray);
    return ray.tfar < 0; // how Embree marks a ray that something stopped
}

RTCSceneTy* RayWorld::embreeScene() const {
    return scene_->scene.get();
}

Vec3 RayWorld::middle_mm() const {
    return scene_->middle;
}

std::optional<RayWorld::Hit> RayWorld::nearest(Vec3 from_mm, Vec3 direction, double reach_mm) const {
    RTCRayHit found{};
    found.ray = rayFrom(from_mm - scene_->middle, direction, 0, reach_mm);
    found.hit.geomID = RTC_INVALID_GEOMETRY_ID;
    RTCIntersectContext context;
    rtcInitIntersectContext(&context);
    rtcIntersect1(scene_->scene.get(), &context, &found);
    if (found.hit.geomID == RTC_INVALID_GEOMETRY_ID) return std::nullopt;
    return Hit{found.ray.tfar, scene_->pieces[found.hit.geomID]};
}

} // namespace gangway::lighting
