"""Holds plan files against the schema with python3-jsonschema: the fixtures must pass, and the broken files
whose mistake a schema can see must not."""
import json
import pathlib
import sys

import jsonschema

# What a schema cannot say, so that it must accept these although the reader refuses them.
BEYOND_A_SCHEMA = (
    "ceiling-", "column-", "device-", "duplicate-", "furniture-kind", "furniture-layer", "furniture-room",
    "furniture-value", "key-twice", "lamp-", "leaf-wider", "leg-", "line-", "opening-", "plate-", "pocket-cavity-zero",
    "room-", "text-nul", "tiles-", "two-leaves", "frame-", "nested",
)
YET_SEEN = ("opening-size-zero", "room-two-corners", "room-too-many-corners", "ceiling-heights-missing",
            "furniture-value-text")


def main(schema_file, folder):
    schema = json.loads(pathlib.Path(schema_file).read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    wrong = []
    good = sorted(pathlib.Path(folder, "fixtures").glob("*.plan.json"))
    for file in good:
        for error in validator.iter_errors(json.loads(file.read_text(encoding="utf-8"))):
            wrong.append(f"{file.name}: {list(error.path)}: {error.message[:200]}")
    seen = 0
    for file in sorted(pathlib.Path(folder, "broken").glob("*.plan.json")):
        try:
            plan = json.loads(file.read_bytes().decode("utf-8"))
        except ValueError:
            continue
        beyond = file.name.startswith(BEYOND_A_SCHEMA) and not file.name.startswith(YET_SEEN)
        valid = validator.is_valid(plan)
        seen += not valid
        if valid != beyond and not file.name.startswith("syntax-"):
            wrong.append(f"{file.name}: the schema {'accepts' if valid else 'refuses'} it")
    print(f"{len(good)} fixtures, {seen} broken files refused by the schema")
    print("\n".join(wrong))
    return 1 if wrong or not good or seen < 30 else 0


sys.exit(main(*sys.argv[1:]))
