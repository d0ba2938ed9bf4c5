// What the light estimate and the legs' marks rest on: IES files that can be read, marks that name one leg.
#include "checks/rules.hpp"

#include "lighting/ies.hpp"

#include <fmt/format.h>
#include <map>

namespace gangway::checks {

using plan::Severity;

void findIes(const Facts& facts, const plan::Room& room, Findings& findings) {
    if (facts.base().empty()) return; // a plan without a folder has no files beside it
    std::map<std::string, std::string, std::less<>> problems; // by file, each read once
    for (const plan::Luminaire* in_room : facts.lampsIn(room.id)) {
        const plan::Luminaire& lamp = *in_room;
        if (lamp.ies.empty()) continue;
        const auto [problem, is_new] = problems.emplace(lamp.ies, std::string());
        if (is_new)
            if (const auto read = lighting::readIes(facts.base() / lamp.ies); !read)
                problem->second = read.error();
        if (problem->second.empty()) continue;
        plan::Finding finding;
        finding.rule = "ies-file";
        finding.severity = Severity::Warn;
        finding.objects = {lamp.id};
        if (const auto at = geometry::hostPoint(facts.house(), lamp.room, lamp.host)) finding.place_mm = *at;
        finding.message =
            fmt::format("The light of {} in {} is taken from a generic distribution: {}",
                        lamp.tag.empty() ? lamp.id : lamp.tag, roomName(facts, lamp.room), problem->second);
        finding.source = "IES LM-63";
        finding.remedy = "Ask the maker for the file again, or leave it out.";
        findings.push_back(std::move(finding));
    }
}

void findMarks(const Facts& facts, Findings& findings) {
    std::map<std::string, const plan::SwitchLeg*, std::less<>> first;
    for (const plan::SwitchLeg& leg : facts.plan().legs) {
        if (leg.letter.empty()) continue;
        const auto [known, is_new] = first.emplace(leg.letter, &leg);
        if (is_new) continue;
        plan::Finding finding;
        finding.rule = "leg-mark-twice";
        finding.severity = Severity::Warn;
        for (const plan::SwitchLeg* one : {&leg, known->second}) {
            for (const plan::WayRef& way : one->controls)
                finding.objects.push_back(way.plate);
            finding.objects.push_back(one->id);
        }
        finding.message =
            fmt::format("Two legs are marked {}: on paper nobody can tell them apart.", leg.letter);
        finding.source = "common practice, no source";
        finding.remedy = "Give one of them another mark.";
        findings.push_back(std::move(finding));
    }
}
} // namespace gangway::checks
