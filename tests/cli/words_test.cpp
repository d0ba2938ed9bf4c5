#include "cli/program.hpp"

#include <catch2/catch.hpp>

using namespace gangway::testing;

TEST_CASE("a mistyped command, option, room, layer or format is answered with the nearest right word") {
    struct Slip {
        std::string call, says;
    };
    const std::string demo = "'" + kDemo + "'";
    for (const auto& slip :
         {Slip{"shets " + demo, "did you mean sheets"},
          Slip{"sheets " + demo + " -o /tmp/x --formts pdf", "--formats"},
          Slip{"sheets " + demo + " -o /tmp/x --formats pfd", "'pdf'"},
          Slip{"sheets " + demo + " -o /tmp/x --room kitchn", "kitchen"},
          Slip{"sheets " + demo + " -o /tmp/x --paper A9", "A3"},
          Slip{"sheets " + demo + " -o /tmp/x --scale 30", "auto, 10, 20, 25 or 50"},
          Slip{"shot " + demo + " -o /tmp/x.png --hide furnitur", "'furniture'"},
          Slip{"shot " + demo + " -o /tmp/x.png --hide xyzzy", "building, furniture, soft"},
          Slip{"shot " + demo + " -o /tmp/x.png --storey cellar", "ground, upper, attic"},
          Slip{"shot " + demo + " -o /tmp/x.png --room hall --wall Z", "A, B, C, D"},
          Slip{"shot " + demo + " -o /tmp/x.jpg", "end in .png, not '/tmp/x.jpg'"},
          Slip{"shot " + demo + " -o /tmp/picture", "end in .png"},
          Slip{"shot " + demo + " -o /tmp/x.png --size big", "WIDTHxHEIGHT"},
          Slip{"shot " + demo + " -o /tmp/x.png --wall A", "--room"},
          Slip{"shot " + demo + " -o /tmp/x.png --eye 1,2 --to 3,4,5", "x,y,z"},
          Slip{"review " + demo + " --agree K-0 --by Me", "did you mean"},
          Slip{"review " + demo + " --agree K-01", "--by"}}) {
        INFO(slip.call);
        const Ran ran = call(slip.call);
        CHECK(ran.code == 2);
        CHECK(ran.out.empty());
        INFO(ran.err);
        CHECK(has(ran.err, slip.says));
    }
}

TEST_CASE("help names every command, each with its exit codes and examples") {
    const Ran all = call("--help");
    CHECK(all.code == 0);
    for (const std::string name : {"open", "sheets", "schedule", "shot", "inspect", "review", "check",
                                   "devices", "free", "what-if", "pack"}) {
        CHECK(has(all.out, name));
        const Ran one = call(name + " --help");
        CHECK(one.code == 0);
        CHECK(has(one.out, "Examples:"));
    }
    CHECK(has(call("shot --help").out, "inspect PLAN --places"));
    CHECK(has(call("inspect --help").out, "A way is one switched output"));
    // What does not exist yet is not offered.
    for (const std::string name : {"import", "dxf"}) {
        INFO(name);
        CHECK(call(name + " x").code == 2);
    }
}
