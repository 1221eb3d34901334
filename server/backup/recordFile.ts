import { type Static, Type } from 'typebox';
import { Role } from '#domain/progress/command.ts';
import { Instant } from '#shared/instant.ts';

const strict = { additionalProperties: false } as const;
const hash = Type.String({ pattern: '^[0-9a-f]{64}$' });
const number = Type.Integer({ minimum: 1 });
const build = Type.String({ pattern: '^[A-Za-z0-9._-]{1,64}$' });

/**
 * The record file: JSON lines in UTF-8, one object a line, told apart by `line`. First a `head`, then for each build a
 * `build` line with the number and hash that its record ends with, its `entry` lines in order and, in a backup, its
 * `receipt`, `link` and `told` lines; last an `end` with the number of lines before it, so that a file cut short shows.
 * `text` is the exact text of an entry and `hash` is sha256(hash before, line feed, text) in hex, where the hash before
 * the first entry is 64 zeros. Secrets of links are never in it, only their sha256.
 */
export const RecordLine = Type.Union([
  Type.Object(
    {
      line: Type.Literal('head'),
      format: Type.Literal('spanwright-record'),
      version: Type.Literal(1),
      program: Type.String(),
      writtenAt: Instant,
    },
    strict,
  ),
  Type.Object(
    { line: Type.Literal('build'), build, number: Type.Integer({ minimum: 0 }), hash },
    strict,
  ),
  Type.Object({ line: Type.Literal('entry'), build, number, hash, text: Type.String() }, strict),
  Type.Object(
    {
      line: Type.Literal('receipt'),
      build,
      id: Type.String(),
      request: Type.String(),
      status: Type.Integer(),
      text: Type.String(),
    },
    strict,
  ),
  Type.Object(
    {
      line: Type.Literal('link'),
      build,
      id: Type.String(),
      role: Role,
      name: Type.String(),
      crew: Type.Union([Type.String(), Type.Null()]),
      secretHash: hash,
      madeAt: Instant,
      withdrawnAt: Type.Union([Instant, Type.Null()]),
    },
    strict,
  ),
  Type.Object(
    {
      line: Type.Literal('told'),
      build,
      number: Type.Integer({ minimum: 0 }),
      at: Instant,
      text: Type.String(),
    },
    strict,
  ),
  Type.Object({ line: Type.Literal('end'), lines: Type.Integer({ minimum: 0 }) }, strict),
]);
export type RecordLine = Static<typeof RecordLine>;
