// Dimmers and what hangs on them.
#include "switching/proof.hpp"

#include <cmath>
#include <fmt/format.h>
#include <unordered_set>

namespace gangway::switching {

using plan::Severity;

namespace {

/// Luminous efficacy below which a lamp is taken for a filament lamp, lm/W; halogen reaches about 20, LED
/// lamps start at about 60; from memory.
constexpr double kFilamentBelow = 30;

/// What hangs on one dimmer; every luminaire once.
struct Dimmed {
    std::vector<const plan::Luminaire*> lamps;
    double watts = 0;
    double rating_w = 0; ///< filament rating that it takes, LED lamps counted by the pack's part
    double led_w = 0;
    bool all_stated = true; ///< every luminaire states its watts
};

bool isFilament(const plan::Luminaire& lamp) {
    return lamp.lumens > 0 && lamp.watts > 0 && lamp.lumens / lamp.watts < kFilamentBelow;
}

Dimmed dimmedBy(const Proof& proof, const Way& way) {
    Dimmed load;
    std::unordered_set<std::string_view> seen;
    for (const plan::SwitchLeg* leg : way.legs)
        for (const std::string& id : leg->luminaires) {
            const plan::Luminaire* lamp = proof.net.luminaire(id);
            if (lamp == nullptr || !seen.insert(id).second) continue;
            load.lamps.push_back(lamp);
            load.watts += lamp->watts;
            load.all_stated = load.all_stated && lamp->watts > 0;
            if (isFilament(*lamp))
                load.rating_w += lamp->watts;
            else
                load.led_w += lamp->watts;
        }
    const double part = proof.pack.dimmer_led_part.value;
    if (part > 0) load.rating_w += load.led_w / part;
    return load;
}

/// Shown without digits that nobody set: 12, 12.5.
std::string watts(double value_w) {
    return fmt::format("{:g} W", std::round(value_w * 10) / 10);
}

plan::Finding about(const Proof& proof, std::string_view rule, Severity severity, const Way& way) {
    auto finding = aboutPlate(proof, rule, severity, *way.plate);
    for (const plan::SwitchLeg* leg : way.legs)
        finding.objects.push_back(leg->id);
    return finding;
}

template <class Rule>
void forDimmers(const Proof& proof, Rule rule) {
    for (const Way& way : proof.net.ways())
        if (way.dimmer && !way.legs.empty()) rule(way, dimmedBy(proof, way));
}

std::string ledPart(const Proof& proof) {
    return fmt::format("{:g} %", proof.pack.dimmer_led_part.value * 100);
}

} // namespace

void proveDimmerLamps(const Proof& proof, Findings& findings) {
    forDimmers(proof, [&](const Way& way, const Dimmed& load) {
        std::string names;
        auto finding = about(proof, "dimmer-not-dimmable", Severity::Fault, way);
        int count = 0;
        for (const plan::Luminaire* lamp : load.lamps) {
            if (lamp->dimmable) continue;
            ++count;
            names += fmt::format("{}{}", names.empty() ? "" : ", ", lampTag(*lamp));
            finding.objects.push_back(lamp->id);
        }
        if (count == 0) return;
        finding.message = fmt::format("{} in {} dims {}, which can't be dimmed.", wayName(proof.net, way.ref),
                                      roomName(proof.net, way.plate->room), names);
        finding.source = "the luminaire's own data";
        finding.remedy = "Choose dimmable lamps, or a switch instead of the dimmer.";
        findings.push_back(std::move(finding));
    });
}

void proveDimmerGreatest(const Proof& proof, Findings& findings) {
    forDimmers(proof, [&](const Way& way, const Dimmed& load) {
        const double most_w = proof.net.loadWindow(way).max_w;
        if (most_w <= 0 || load.rating_w <= most_w + kRounding) return;
        auto finding = about(proof, "dimmer-over-load", Severity::Fault, way);
        finding.message = fmt::format(
            "{} in {} carries {} lamps of {} together, {} of it LED; with LED lamps counted at {} of the "
            "filament rating that takes a dimmer of {}, and this one is rated {}.",
            wayName(proof.net, way.ref), roomName(proof.net, way.plate->room), load.lamps.size(),
            watts(load.watts), watts(load.led_w), ledPart(proof), watts(load.rating_w), watts(most_w));
        finding.source = proof.pack.dimmer_led_part.source;
        finding.remedy = fmt::format("A dimmer rated {} or more, one whose maker lists these lamps, or fewer "
                                     "lamps on it.",
                                     watts(load.rating_w));
        findings.push_back(std::move(finding));
    });
}

void proveDimmerLeast(const Proof& proof, Findings& findings) {
    forDimmers(proof, [&](const Way& way, const Dimmed& load) {
        const double least_w = proof.net.loadWindow(way).min_w;
        if (least_w <= 0 || load.watts <= 0 || !load.all_stated) return;
        if (load.watts >= least_w - kRounding) return;
        auto finding = about(proof, "dimmer-under-minimum", Severity::Warn, way);
        finding.message =
            fmt::format("{} in {} carries {} ({} lamp{}), less than the {} it needs: lamps may flicker or "
                        "stay dimly lit.",
                        wayName(proof.net, way.ref), roomName(proof.net, way.plate->room), watts(load.watts),
                        load.lamps.size(), load.lamps.size() == 1 ? "" : "s", watts(least_w));
        finding.source = "the module's least load; maker's data rules (trade facts 6.7)";
        finding.remedy =
            fmt::format("A dimmer made for {} or less, or join it with another leg.", watts(load.watts));
        findings.push_back(std::move(finding));
    });
}

} // namespace gangway::switching
