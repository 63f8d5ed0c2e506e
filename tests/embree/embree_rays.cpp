// Traces rays with Embree 3, one ray a call on one thread: the witness of our own tracer in tests, its rival in the bench.
//
//   embree_rays FILE QUALITY FLAGS      QUALITY low|medium|high; FLAGS of r (robust) and f (filter, for the -except questions), or -
//
// FILE, little-endian: int32 triangles, 9 floats each; int32 sets; for each set int32 rays, then 8 numbers a ray: origin, direction,
// limit (floats) and the triangle that the ray may not hit (int32, -1 for none). Prints the seconds that the build took. Then reads
// lines from standard input and answers each with one line, processor seconds and wall seconds of the loop over all rays:
//   occluded SET NEAR            any hit between NEAR and the limit, the excepted triangle included
//   closest SET NEAR             the closest hit, the same
//   occluded-except SET FILE     any hit but the excepted triangle, by a filter; writes an int32 a ray, 1 where it is blocked
//   closest-except SET FILE      the closest hit but the excepted triangle; writes int32 triangle (-1 for none), float distance
// Ends with its input.
#include <embree3/rtcore.h>
#include <pmmintrin.h>
#include <time.h>
#include <xmmintrin.h>

#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <string>
#include <vector>

namespace {

struct GivenRay { float origin[3], direction[3], limit; int except; };

static_assert(sizeof(GivenRay) == 32, "as the file has it");

// What the filter needs beside the context.
struct ExceptContext { RTCIntersectContext context; unsigned except; };

[[noreturn]] void fail(const std::string& message) {
  std::fprintf(stderr, "embree_rays: %s\n", message.c_str());
  std::exit(1);
}

void read(std::FILE* file, void* to, size_t bytes) {
  if (bytes > 0 && std::fread(to, 1, bytes, file) != bytes) fail("the file of triangles and rays ends early");
}

int readCount(std::FILE* file) {
  int count;
  read(file, &count, sizeof count);
  if (count < 0) fail("a count is negative");
  return count;
}

double seconds(clockid_t clock) {
  timespec time;
  clock_gettime(clock, &time);
  return time.tv_sec + 1e-9 * time.tv_nsec;
}

void rejectExcepted(const RTCFilterFunctionNArguments* arguments) {
  auto except = reinterpret_cast<const ExceptContext*>(arguments->context)->except;
  if (RTCHitN_primID(arguments->hit, arguments->N, 0) == except) arguments->valid[0] = 0;
}

RTCRay rayOf(const GivenRay& given, float near) {
  RTCRay ray;
  ray.org_x = given.origin[0]; ray.org_y = given.origin[1]; ray.org_z = given.origin[2];
  ray.dir_x = given.direction[0]; ray.dir_y = given.direction[1]; ray.dir_z = given.direction[2];
  ray.tnear = near; ray.tfar = given.limit; ray.time = 0; ray.mask = ~0u; ray.id = 0; ray.flags = 0;
  return ray;
}

int trace(RTCScene scene, const std::vector<GivenRay>& rays, bool closest, bool filter, float near, std::vector<int>& answers) {
  ExceptContext context;
  rtcInitIntersectContext(&context.context);
  if (filter) context.context.filter = rejectExcepted;
  int hits = 0;
  for (size_t i = 0; i < rays.size(); i++) {
    context.except = static_cast<unsigned>(rays[i].except);
    if (closest) {
      RTCRayHit hit;
      hit.ray = rayOf(rays[i], near);
      hit.hit.geomID = hit.hit.primID = hit.hit.instID[0] = RTC_INVALID_GEOMETRY_ID;
      rtcIntersect1(scene, &context.context, &hit);
      bool found = hit.hit.geomID != RTC_INVALID_GEOMETRY_ID;
      hits += found;
      if (answers.empty()) continue;
      answers[2 * i] = found ? static_cast<int>(hit.hit.primID) : -1;
      std::memcpy(&answers[2 * i + 1], &hit.ray.tfar, sizeof(float));
    } else {
      RTCRay ray = rayOf(rays[i], near);
      rtcOccluded1(scene, &context.context, &ray);
      bool blocked = ray.tfar < 0;
      hits += blocked;
      if (!answers.empty()) answers[i] = blocked;
    }
  }
  return hits;
}

}  // namespace

int main(int count, char** words) {
  if (count != 4) fail("expected FILE QUALITY FLAGS");
  std::FILE* file = std::fopen(words[1], "rb");
  if (!file) fail(std::string("cannot open ") + words[1]);
  int triangles = readCount(file);
  std::vector<float> corners(9 * static_cast<size_t>(triangles));
  read(file, corners.data(), corners.size() * sizeof(float));
  std::vector<std::vector<GivenRay>> sets(readCount(file));
  for (auto& set : sets) {
    set.resize(readCount(file));
    read(file, set.data(), set.size() * sizeof(GivenRay));
  }
  std::fclose(file);

  // As Embree's manual advises.
  _MM_SET_FLUSH_ZERO_MODE(_MM_FLUSH_ZERO_ON);
  _MM_SET_DENORMALS_ZERO_MODE(_MM_DENORMALS_ZERO_ON);
  RTCDevice device = rtcNewDevice("threads=1");
  if (!device) fail("no device");
  double start = seconds(CLOCK_MONOTONIC);
  RTCScene scene = rtcNewScene(device);
  std::string quality = words[2];
  rtcSetSceneBuildQuality(scene, quality == "high" ? RTC_BUILD_QUALITY_HIGH : quality == "low" ? RTC_BUILD_QUALITY_LOW : RTC_BUILD_QUALITY_MEDIUM);
  bool robust = std::strchr(words[3], 'r'), filter = std::strchr(words[3], 'f');
  int flags = (robust ? RTC_SCENE_FLAG_ROBUST : 0) | (filter ? RTC_SCENE_FLAG_CONTEXT_FILTER_FUNCTION : 0);
  rtcSetSceneFlags(scene, static_cast<RTCSceneFlags>(flags));
  RTCGeometry geometry = rtcNewGeometry(device, RTC_GEOMETRY_TYPE_TRIANGLE);
  if (triangles > 0) {
    void* vertices = rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_VERTEX, 0, RTC_FORMAT_FLOAT3, 12, 3 * static_cast<size_t>(triangles));
    auto* indices = static_cast<unsigned*>(
        rtcSetNewGeometryBuffer(geometry, RTC_BUFFER_TYPE_INDEX, 0, RTC_FORMAT_UINT3, 12, static_cast<size_t>(triangles)));
    std::memcpy(vertices, corners.data(), corners.size() * sizeof(float));
    for (int i = 0; i < 3 * triangles; i++) indices[i] = static_cast<unsigned>(i);
  }
  rtcCommitGeometry(geometry);
  rtcAttachGeometry(scene, geometry);
  rtcCommitScene(scene);
  std::printf("%.9f\n", seconds(CLOCK_MONOTONIC) - start);
  std::fflush(stdout);

  char question[64], where[4096];
  int set;
  while (std::scanf("%63s %d %4095s", question, &set, where) == 3) {
    if (set < 0 || set >= static_cast<int>(sets.size())) fail("no such set of rays");
    std::string asked = question;
    bool closest = asked.rfind("closest", 0) == 0, except = asked.find("-except") != std::string::npos;
    if (except && !filter) fail("except needs the flag f");
    std::vector<int> answers(except ? (closest ? 2 : 1) * sets[set].size() : 0);
    double cpu = seconds(CLOCK_THREAD_CPUTIME_ID), wall = seconds(CLOCK_MONOTONIC);
    int hits = trace(scene, sets[set], closest, filter, except ? 0 : std::strtof(where, nullptr), answers);
    cpu = seconds(CLOCK_THREAD_CPUTIME_ID) - cpu;
    wall = seconds(CLOCK_MONOTONIC) - wall;
    if (except) {
      std::FILE* out = std::fopen(where, "wb");
      if (!out || std::fwrite(answers.data(), sizeof(int), answers.size(), out) != answers.size() || std::fclose(out) != 0) fail("cannot write the answers");
    }
    std::printf("%.9f %.9f %d\n", cpu, wall, hits);
    std::fflush(stdout);
  }
  rtcReleaseGeometry(geometry);
  rtcReleaseScene(scene);
  rtcReleaseDevice(device);
}
