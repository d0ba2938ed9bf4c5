"""Rooms with one wall each that is hard to draw: crowded, tiny, long, under a slope, plates over each other at one
set-out, twenty plates in three metres. The same seed gives the same plan. Not a fixture of real houses: the numbers
are made up."""
import json
import random

MODULES = ["socket-f", "switch-1way", "switch-2way", "data-rj45"]


def plate(number, u, v, modules, upright=False):
    made = {"id": f"p{number}", "tag": f"P-{number}", "wall": "A", "setOut": u, "height": v, "modules": modules,
            "finish": "white", "for": "made up"}
    if upright:
        made["direction"] = "vertical"
    return made


def crowded(random_, number, length):
    plates, u = [], 120.0
    while u < length - 150:
        gangs = random_.choice([1, 1, 2, 3])
        v = random_.choice([300, 300, 1050, 1150, 1173.5, 1500, 2200])
        plates.append(plate(number + len(plates), round((u + 71 * (gangs - 1) / 2) * 2) / 2, v,
                            [random_.choice(MODULES) for _ in range(gangs)]))
        u += 71 * gangs + random_.choice([15, 40, 90, 300])
    return plates


def tiny(random_, number, length):
    return [plate(number, round(length / 2), random_.choice([300, 1050]), ["switch-1way"])]


def few(random_, number, length):
    count = random_.randint(2, 6)
    return [plate(number + i, round(length * (i + 0.5) / count), random_.choice([300, 450, 1050]),
                  [random_.choice(MODULES)]) for i in range(count)]


def stacked(random_, number, length):
    u = round(length * random_.uniform(0.3, 0.7))
    return [plate(number + i, u, 250 + 100 * i, ["socket-f"]) for i in range(random_.randint(3, 9))]


def twenty(random_, number, length):
    return [plate(number + i, 90 + i * 145, [300, 1050, 400][i % 3], ["socket-f"]) for i in range(20)]


KINDS = [("crowded", crowded, (1800, 5500)), ("tiny", tiny, (350, 900)), ("long", few, (7000, 14000)),
         ("sloped", few, (2400, 5000)), ("stacked", stacked, (1500, 4000)), ("twenty", twenty, (3000, 3000))]


def made(count, seed):
    random_ = random.Random(seed)
    plan = {"gangway": 1,
            "project": {"name": "Hard walls", "number": "GW-T03", "designer": "made up", "date": "2026-01-15",
                        "revision": "A", "status": "test"},
            "storeys": [{"id": "ground", "name": "Ground floor", "plateFormat": "round-71", "siteLine": 1000}],
            "rooms": [], "plates": []}
    for i in range(count):
        name, fill, (least, most) = KINDS[i % len(KINDS)]
        length = round(random_.uniform(least, most))
        west = i * 16000
        corners = [[west, 3000], [west + length, 3000], [west + length, 0], [west, 0]]
        room = {"id": f"r{i}", "letter": "P", "name": f"Room {i} {name}", "storey": "ground", "outline": corners,
                "walls": [{"id": w, "structure": "masonry", "buildUp": [{"material": "plaster", "thickness": 13}]}
                          for w in "ABCD"],
                "ceiling": 2500, "floorBuildUp": [{"material": "screed", "thickness": 65}]}
        if name == "sloped":
            room["ceiling"] = {"heights": [1300, 2600, 2600, 1300]}
        plan["rooms"].append(room)
        for one in fill(random_, len(plan["plates"]) + 1, length):
            one["room"] = room["id"]
            plan["plates"].append(one)
    return plan


def write(file, count, seed=1):
    with open(file, "w") as out:
        json.dump(made(count, seed), out, indent=1)
