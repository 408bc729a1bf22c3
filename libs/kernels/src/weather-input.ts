import { z } from 'zod';

/** Weather of a kernel: a file of the user's own, or a built-in climate by KEY. */
export const weatherInput = z.union([z.strictObject({ epw: z.string().min(1) }), z.strictObject({ climate: z.string().min(1) })]);
