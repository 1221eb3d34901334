import type { TSchema } from 'typebox';
import Value from 'typebox/value';
import type { Fault } from '../fault.ts';

/** The parts of a JSON schema that the walk looks at. */
type Node = {
  readonly type?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly items?: Node;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly anyOf?: readonly Node[];
  readonly const?: unknown;
  readonly pattern?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
};

/**
 * Everything in `json` that the schema does not allow, each by its JSON path; empty when it fits. Objects are closed:
 * a field the schema does not name is a fault. Walks objects and lists itself, because the library stops after a
 * fixed number of errors and says "schema is false" where a person wants to hear which fields there are.
 */
export function schemaFaults(schema: TSchema, json: unknown): Fault[] {
  const faults: Fault[] = [];
  walk(schema as Node, json, '', faults);
  return faults;
}

function walk(node: Node, value: unknown, path: string, faults: Fault[]): void {
  if (node.type === 'object' && node.properties && isRecord(value)) {
    walkObject(node, node.properties, value, path, faults);
  } else if (node.type === 'array' && node.items && Array.isArray(value)) {
    const { minItems = 0, maxItems = Number.POSITIVE_INFINITY } = node;
    if (value.length < minItems || value.length > maxItems) {
      faults.push({ path, found: `${value.length} entries`, expected: describe(node) });
    }
    for (const [row, item] of value.entries()) {
      walk(node.items, item, `${path}/${row}`, faults);
    }
  } else if (node.anyOf?.length === 2 && node.anyOf[1]?.type === 'null' && value !== null) {
    // "This or null": say what is wrong with this, rather than that neither fits.
    walk(node.anyOf[0] as Node, value, path, faults);
  } else if (!Value.Check(node as TSchema, value)) {
    faults.push({ path, found: show(value), expected: describe(node) });
  }
}

function walkObject(
  node: Node,
  properties: Readonly<Record<string, Node>>,
  value: Readonly<Record<string, unknown>>,
  path: string,
  faults: Fault[],
): void {
  for (const key of Object.keys(value)) {
    if (!Object.hasOwn(properties, key)) {
      const known = Object.keys(properties).join(', ');
      faults.push({
        path: `${path}/${pointer(key)}`,
        found: 'an unknown field',
        expected: `one of ${known}`,
      });
    }
  }
  for (const [key, property] of Object.entries(properties)) {
    if (Object.hasOwn(value, key)) {
      walk(property, value[key], `${path}/${pointer(key)}`, faults);
    } else if (node.required?.includes(key)) {
      faults.push({ path: `${path}/${key}`, found: 'nothing', expected: describe(property) });
    }
  }
}

/** Escapes a key for a JSON pointer (RFC 6901). */
function pointer(key: string): string {
  return key.replaceAll('~', '~0').replaceAll('/', '~1');
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function show(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

function describe(node: Node): string {
  if (node.anyOf) {
    return `one of ${node.anyOf.map(describe).join(', ')}`;
  }
  if (node.const !== undefined) {
    return JSON.stringify(node.const);
  }
  switch (node.type) {
    case 'integer':
    case 'number':
      return describeNumber(node);
    case 'string':
      return describeText(node);
    case 'array':
      return `a list${range(node.minItems, node.maxItems, 'entries')}`;
    case 'boolean':
      return 'true or false';
    case 'null':
      return 'null';
    default:
      return node.properties ? `an object with ${(node.required ?? []).join(', ')}` : 'a value';
  }
}

function describeNumber(node: Node): string {
  const kind = node.type === 'integer' ? 'a whole number' : 'a number';
  if (node.exclusiveMinimum !== undefined) {
    const most = node.maximum === undefined ? '' : `, at most ${node.maximum}`;
    return `${kind} above ${node.exclusiveMinimum}${most}`;
  }
  return `${kind}${range(node.minimum, node.maximum, '')}`;
}

function describeText(node: Node): string {
  if (node.pattern !== undefined) {
    return `a text like ${node.pattern}`;
  }
  return `a text${range(node.minLength, node.maxLength, 'characters')}`;
}

function range(least: number | undefined, most: number | undefined, unit: string): string {
  const tail = unit === '' ? '' : ` ${unit}`;
  if (least !== undefined && most !== undefined) {
    return ` from ${least} to ${most}${tail}`;
  }
  if (least !== undefined) {
    return ` of at least ${least}${tail}`;
  }
  return most === undefined ? '' : ` of at most ${most}${tail}`;
}
