import type { Row } from '#tests/domain/forecast/smallNetwork.ts';

// Hillier and Lieberman, Introduction to Operations Research, chapter on project management: a
// building contractor's 14 activities, in weeks (predecessors and estimates from memory of the
// book; durations and the deadline of 47 weeks as read in a reprint).
// biome-ignore format: one activity a line, as in the source table
export const contractor: Row[] = [
  { id: 'A', minutes: [1, 2, 3] },
  { id: 'B', minutes: [2, 3.5, 8], after: ['A'] },
  { id: 'C', minutes: [6, 9, 18], after: ['B'] },
  { id: 'D', minutes: [4, 5.5, 10], after: ['C'] },
  { id: 'E', minutes: [1, 4.5, 5], after: ['C'] },
  { id: 'F', minutes: [4, 4, 10], after: ['E'] },
  { id: 'G', minutes: [5, 6.5, 11], after: ['D'] },
  { id: 'H', minutes: [5, 8, 17], after: ['E', 'G'] },
  { id: 'I', minutes: [3, 7.5, 9], after: ['C'] },
  { id: 'J', minutes: [3, 9, 9], after: ['F', 'I'] },
  { id: 'K', minutes: [4, 4, 4], after: ['J'] },
  { id: 'L', minutes: [1, 5.5, 7], after: ['J'] },
  { id: 'M', minutes: [1, 2, 3], after: ['H'] },
  { id: 'N', minutes: [5, 5.5, 9], after: ['K', 'L'] },
];

// Krajewski and Ritzman, Operations Management: a hospital's move, 11 activities, in weeks, with two
// paths of nearly one length (durations, predecessors and paths as read in reprints; estimates from memory of the book).
// biome-ignore format: one activity a line, as in the source table
export const hospital: Row[] = [
  { id: 'A', minutes: [11, 12, 13] },
  { id: 'B', minutes: [7, 8, 15] },
  { id: 'C', minutes: [5, 10, 15], after: ['A'] },
  { id: 'D', minutes: [8, 9, 16], after: ['B'] },
  { id: 'E', minutes: [14, 25, 30], after: ['B'] },
  { id: 'F', minutes: [6, 9, 18], after: ['A'] },
  { id: 'G', minutes: [25, 36, 41], after: ['C'] },
  { id: 'H', minutes: [35, 40, 45], after: ['D'] },
  { id: 'I', minutes: [10, 13, 28], after: ['A'] },
  { id: 'J', minutes: [1, 2, 15], after: ['E', 'G', 'H'] },
  { id: 'K', minutes: [5, 6, 7], after: ['F', 'I', 'J'] },
];
