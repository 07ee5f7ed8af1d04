"""Checks that a document is valid OpenAPI 3.1 and that its examples are what their schemas say.

Specification: OpenAPI 3.1.0; JSON Schema 2020-12 for the examples.
"""

import json
import sys

from jsonschema import Draft202012Validator
from openapi_spec_validator import validate


def examples(operation):
    """Every media type with an example: of the request, then of the answers."""
    bodies = [operation.get("requestBody", {})]
    bodies += operation["responses"].values()
    for body in bodies:
        for kind, content in body.get("content", {}).items():
            if "example" in content:
                yield kind, content


def main(path):
    with open(path, encoding="utf-8") as file:
        document = json.load(file)
    validate(document)
    faults = 0
    checked = 0
    for address, item in document["paths"].items():
        for method, operation in item.items():
            for kind, content in examples(operation):
                schema = {"components": document["components"], **content.get("schema", {})}
                checked += 1
                for fault in Draft202012Validator(schema).iter_errors(content["example"]):
                    faults += 1
                    print(f"{method} {address} {kind} {fault.json_path}: {fault.message}")
    print(f"{checked} examples, {faults} faults")
    return 1 if faults or not checked else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
