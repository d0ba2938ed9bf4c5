"""Holds the shipped data files against their schemas with python3-jsonschema: they must pass, and the broken files
whose mistake a schema can see must not. Names of broken files whose mistake it can't see start with "beyond-"."""
import json
import pathlib
import sys

import jsonschema


def check(schema_file, good, broken):
    schema = json.loads(schema_file.read_text(encoding="utf-8"))
    jsonschema.Draft202012Validator.check_schema(schema)
    validator = jsonschema.Draft202012Validator(schema)
    wrong, refused = [], 0
    for file in good:
        for error in validator.iter_errors(json.loads(file.read_text(encoding="utf-8"))):
            wrong.append(f"{file.name}: {list(error.path)}: {error.message[:200]}")
    for file in broken:
        try:
            valid = validator.is_valid(json.loads(file.read_text(encoding="utf-8")))
        except ValueError:
            continue
        refused += not valid
        if valid != file.name.startswith("beyond-"):
            wrong.append(f"{file.name}: the schema {'accepts' if valid else 'refuses'} it")
    print(f"{schema_file.name}: {len(good)} files pass, {refused} broken ones refused")
    return wrong, len(good), refused


def main(assets, tests):
    assets, tests = pathlib.Path(assets), pathlib.Path(tests)
    wrong = []
    for name, folder, broken, least in (("catalogue", "catalogue", "broken", 8), ("pack", "packs", "broken/packs", 4)):
        found, good, refused = check(assets / "schema" / f"{name}.schema.json", sorted((assets / folder).glob("*.json")),
                                     sorted((tests / broken).glob("*.json")))
        wrong += found
        if good == 0 or refused < least:
            wrong.append(f"{name}: too few files to say anything")
    print("\n".join(wrong))
    return 1 if wrong else 0


sys.exit(main(*sys.argv[1:]))
