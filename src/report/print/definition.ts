/** The `print` section of the report: the shape of every print; the maps themselves come from engine/play/print.ts. */
import * as z from 'zod/mini';
import { status } from '../play/definition.ts';
import { mm, mmOrNull } from '../quantities.ts';

const share = (description: string) => z.number().check(z.meta({ description: `${description}, 0 to 1` }));
const degrees = (description: string) => z.number().check(z.meta({ description: `${description}, degrees` }));

const printShapeReport = z.strictObject({
  seat: z.string(),
  part: z.enum(['journal', 'bush']),
  word: z
    .enum(['whole', 'smallEnd', 'largeEnd', 'bothEnds', 'band', 'lobes', 'oneSide', 'crossed', 'uneven', 'none'])
    .check(
      z.meta({
        description:
          'Blue all over where the parts overlap; only toward an end, toward both, or between; patches all round; only on one side; on opposite sides at the two ends; bare in places but nowhere all round; none. A straight seat’s small end is its rear end',
      }),
    ),
  covered: share('Share of the surface that is blue'),
  thirds: z
    .tuple([share('Small end'), share('Middle'), share('Large end')])
    .check(z.meta({ description: 'The same of each third of its length' })),
  overlap: share('Share of the surface that the other part reaches'),
  coveredOverlap: share('Share of that which is blue'),
  bare: z
    .strictObject({
      small: share('From the small end inward'),
      middle: share('The longest stretch with blue on both sides of it'),
      large: share('From the large end inward'),
    })
    .check(z.meta({ description: 'Shares of the overlapping length that are bare all round' })),
  films: z
    .nullable(z.strictObject({ small: mm('At its small end'), middle: mm('Half way'), large: mm('At its large end') }))
    .check(
      z.meta({
        description: 'Film where the parts overlap, mean round, the nearest they came; null where they do not',
      }),
    ),
  from: mmOrNull('Rearmost station with blue, in the datum of the part'),
  to: mmOrNull('Foremost station with blue'),
  patches: z.int().check(z.meta({ description: 'Separate patches round the part; 0 for a closed ring or none' })),
  side: degrees('Mean direction of the blue, from x toward y'),
  oneSided: share('0 for an even ring, 1 for a single line'),
});

export const printReport = z.strictObject({
  thickness: mm('Blue that shows as contact'),
  status,
  press: z.array(printShapeReport).check(z.meta({ description: 'Pushed home once without turning' })),
  turned: z
    .array(printShapeReport)
    .check(z.meta({ description: 'The journal turned through a whole turn while pressed' })),
});

export type PrintReport = z.infer<typeof printReport>;
export type PrintShapeReport = z.infer<typeof printShapeReport>;
