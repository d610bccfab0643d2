/**
 * Every trade word the screens use, and what it means, for somebody in the first year of the trade. The same words as
 * the screens; no figure that depends on a person's units.
 */
export interface Entry {
  word: string;
  /** other forms of it that are found in a sentence */
  forms?: readonly string[];
  meaning: string;
}

export interface Chapter {
  title: string;
  entries: readonly Entry[];
}

const THE_PAIR: readonly Entry[] = [
  {
    word: 'spindle',
    forms: ['spindles'],
    meaning: 'The shaft of the headstock that turns, with the work or the tool. The journal is part of it.',
  },
  {
    word: 'headstock',
    forms: ['headstocks'],
    meaning: 'The body of the machine that holds the bush, and in it the spindle.',
  },
  {
    word: 'journal',
    forms: ['journals'],
    meaning: 'The male part: the cones of the spindle that run in the bush.',
  },
  {
    word: 'bush',
    forms: ['bushes'],
    meaning: 'The hollow part that stands still in the headstock. The journal runs in it.',
  },
  {
    word: 'seat',
    forms: ['seats'],
    meaning:
      'One cone of the journal, or a straight stretch of it, and the bore it runs in: two surfaces that mate, with oil between.',
  },
  {
    word: 'cone',
    forms: ['cones', 'taper', 'tapers', 'tapered'],
    meaning: 'A round surface whose diameter grows evenly along its axis.',
  },
  {
    word: 'half angle',
    forms: ['half angles'],
    meaning: 'The angle between a cone and its axis. The whole angle of the cone is twice that.',
  },
  {
    word: 'included angle',
    forms: ['included angles', 'included', 'incl'],
    meaning: 'The whole angle of a cone, from side to side: twice its half angle.',
  },
  {
    word: 'taper per foot',
    meaning: 'How much the diameter of a cone grows along a foot of its axis. One in so many (1:n) says the same.',
  },
  {
    word: 'gauge plane',
    forms: ['gauge planes'],
    meaning: 'The station at which the diameter of a cone is told and measured.',
  },
  {
    word: 'steep',
    meaning: 'A steep cone has a large angle. It takes thrust, and a move along the axis opens or shuts its film fast.',
  },
  {
    word: 'shallow',
    meaning:
      'A shallow cone has a small angle. It carries the load from the side, and a move along the axis hardly changes its film.',
  },
  {
    word: 'nose',
    forms: ['noseward'],
    meaning:
      'The end of the spindle where the work is held. Noseward is along the axis toward it, rearward away from it.',
  },
  { word: 'rearward', forms: ['rear'], meaning: 'Along the axis, away from the nose.' },
  {
    word: 'station',
    forms: ['stations'],
    meaning: 'A place along the axis of a part, told by how far it is from the part’s datum.',
  },
  { word: 'datum', forms: ['datums'], meaning: 'The plane of a part from which its stations are measured.' },
  {
    word: 'adjuster',
    meaning: 'The thread that moves the journal along its axis and holds it there.',
  },
  { word: 'pitch', meaning: 'How far the adjuster moves the journal in one turn.' },
  {
    word: 'face',
    forms: ['faces', 'spacer', 'spacers'],
    meaning:
      'A flat surface across the axis, such as a shoulder or the end of a spacer. Metal off it moves the seats that rest on it.',
  },
];

const THE_FIT: readonly Entry[] = [
  {
    word: 'film',
    forms: ['films'],
    meaning: 'The oil between journal and bush, and how thick it is: the gap from one surface to the other.',
  },
  {
    word: 'least film',
    forms: ['thinnest film', 'least films'],
    meaning: 'The film at the place where it is thinnest. It decides whether metal touches.',
  },
  {
    word: 'position',
    forms: ['positions'],
    meaning: 'Where the journal stands along its axis. More is further noseward.',
  },
  {
    word: 'first touch',
    forms: ['touches first', 'touch first'],
    meaning:
      'As the journal closes, one seat meets metal before the others. It stops the journal, so the others stay open.',
  },
  {
    word: 'relation',
    meaning:
      'How far apart the two cones of the bush stand along the axis, against how far apart those of the journal do. It decides whether both films can be right at once.',
  },
  {
    word: 'opposite',
    meaning: 'On the other side of the axis, half a turn round from the place told before.',
  },
  {
    word: 'wanted film',
    forms: ['wanted films', 'films wanted', 'film wanted'],
    meaning: 'The film that is asked for in a seat, with how much more or less will do.',
  },
  {
    word: 'tolerance',
    forms: ['tolerances'],
    meaning: 'How far something may be from what is wanted and still be right.',
  },
  {
    word: 'interference',
    forms: ['pressed in', 'pressed into', 'overlap', 'overlaps'],
    meaning:
      'The journal is larger than the room the bush leaves for it, so the metal of both is pressed. Drawn as overlap.',
  },
  { word: 'clearance', forms: ['clearances'], meaning: 'The room between journal and bush for oil.' },
  { word: 'play', meaning: 'How far a part can move before metal stops it.' },
  {
    word: 'end play',
    meaning: 'How far the journal can be moved along its axis, to and fro, before something stops it.',
  },
  {
    word: 'shake',
    meaning: 'How far the spindle can be pushed from side to side by hand. An indicator reads it.',
  },
  {
    word: 'self-holding',
    meaning: 'A cone of small angle sticks once it is pressed home: friction holds it, and it must be driven out.',
  },
  {
    word: 'home',
    forms: ['pushed home', 'pressed home'],
    meaning: 'Pushed in as far as it goes, until metal stops it.',
  },
  {
    word: 'marking blue',
    forms: ['blue', 'blued'],
    meaning: 'A thin blue paste put on one part. Where the parts bear, it is carried to the other.',
  },
  { word: 'print', forms: ['prints'], meaning: 'The pattern that marking blue leaves. It shows where the parts bear.' },
  {
    word: 'profile',
    meaning: 'How a surface departs from a straight line along its length.',
  },
  {
    word: 'lobes',
    forms: ['lobe', 'lobed'],
    meaning: 'High places round a part that is not quite round.',
  },
  {
    word: 'run-out',
    meaning: 'How far a surface swings as it turns, because its axis is not the axis it turns about.',
  },
  { word: 'barrelled', meaning: 'A surface higher in its middle than at its ends.' },
  { word: 'hollow', meaning: 'A surface lower in its middle than at its ends.' },
  {
    word: 'burr',
    forms: ['burrs'],
    meaning: 'A small raised edge of metal. It holds parts apart and spoils readings.',
  },
];

const MEASURING: readonly Entry[] = [
  {
    word: 'reading',
    forms: ['readings'],
    meaning: 'What a gauge showed, written down with where and how it was read.',
  },
  {
    word: 'gauge',
    forms: ['gauges', 'gauged'],
    meaning: 'Anything that measures: micrometer, indicator, rolls, balls, blocks.',
  },
  { word: 'micrometer', meaning: 'A gauge with a fine screw that measures across a part.' },
  {
    word: 'micrometre',
    forms: ['micrometres'],
    meaning: 'A thousandth of a millimetre. Films are a few of them.',
  },
  {
    word: 'tenth',
    forms: ['tenths'],
    meaning:
      'A tenth of a thousandth of an inch: ten thousand of them make one. It is some two and a half micrometres.',
  },
  {
    word: 'proud',
    meaning: 'Standing out above the surface or face it is measured from. The other way is below it.',
  },
  { word: 'indicator', meaning: 'A gauge whose needle shows small moves of whatever its tip rests on.' },
  {
    word: 'rolls',
    forms: ['roll'],
    meaning:
      'Two hardened cylinders of known diameter. Laid against a cone they give a micrometer something to measure over.',
  },
  {
    word: 'ball',
    forms: ['balls'],
    meaning: 'A steel ball of known diameter. How deep it sits in the bush tells how wide the bush is there.',
  },
  {
    word: 'sine bar',
    meaning:
      'A bar on two rolls a known length apart. Raised at one end by a stack of known height, it stands at a known angle.',
  },
  {
    word: 'stack',
    forms: ['stacks'],
    meaning: 'Gauge blocks put together to make one height.',
  },
  {
    word: 'gauge blocks',
    forms: ['gauge block', 'block', 'blocks', 'block set'],
    meaning: 'Flat pieces of steel whose height is known very closely.',
  },
  {
    word: 'stand-off',
    forms: ['stand-offs'],
    meaning:
      'Where the journal stands when the parts are put together and pushed home: the position of first touch, as read.',
  },
  { word: 'straightness', meaning: 'How far a surface bends away from a straight line between its ends.' },
  { word: 'bore', meaning: 'A hole, and its inside surface.' },
  {
    word: 'residual',
    forms: ['residuals'],
    meaning: 'What a reading shows less what it ought to show, were the parts as all readings together say.',
  },
  { word: 'scatter', meaning: 'How much readings of the same thing differ among themselves.' },
  {
    word: 'slip',
    forms: ['slips'],
    meaning: 'A mistake at the bench: a wrong roll, a misread dial, a figure put down wrongly.',
  },
  {
    word: 'assumed',
    meaning: 'Not read and not drawn: a value taken in proportion to what is known, until somebody knows better.',
  },
];

const HOW_SURE: readonly Entry[] = [
  {
    word: 'belief',
    forms: ['believed', 'beliefs'],
    meaning: 'What the parts most likely are, by all readings, cuts and trials together, with how sure that is.',
  },
  {
    word: 'doubt',
    forms: ['doubts'],
    meaning: 'How far what is told may be off. It is written after ±.',
  },
  {
    word: 'odds',
    meaning: 'How often the pair would come out right, if it were made many times as surely as it is known now.',
  },
  { word: 'chance', meaning: 'How many times in a hundred something is to be expected.' },
  {
    word: 'standard uncertainty',
    forms: ['standard uncertainties'],
    meaning: 'The usual size of an error. About two errors in three are smaller.',
  },
  {
    word: 'chi-square',
    meaning: 'A number that grows as readings disagree by more than their doubts allow.',
  },
  {
    word: 'spread',
    forms: ['spreads'],
    meaning: 'How much something differs from one made part, or one setting, to the next.',
  },
  {
    word: 'draws',
    forms: ['pairs drawn'],
    meaning: 'Pairs made up by the program, each as it might well come out. Counting them gives the odds.',
  },
];

const RUNNING: readonly Entry[] = [
  {
    word: 'load',
    forms: ['loads'],
    meaning: 'What pushes on the spindle: its own weight and the push of the cut.',
  },
  { word: 'thrust', meaning: 'A push along the axis.' },
  {
    word: 'pressure',
    meaning:
      'How hard the oil pushes on each piece of a surface. The turning journal drags oil into the narrow side, and that makes it.',
  },
  {
    word: 'viscosity',
    forms: ['ISO VG'],
    meaning:
      'How thick an oil is: how hard it is to make it flow. It falls as the oil warms. ISO VG is its number at 40 °C.',
  },
  { word: 'friction', forms: ['drag'], meaning: 'What brakes the turning. In oil it becomes heat.' },
  {
    word: 'roughness',
    meaning: 'How high the finest ridges stand that cutting, grinding or lapping leaves on a surface.',
  },
  {
    word: 'full film',
    meaning: 'Oil thick enough to part the surfaces wholly: no ridge of one reaches the other.',
  },
  {
    word: 'whirl',
    forms: ['whirls'],
    meaning:
      'The spindle’s axis circles in the bush by itself, driven by the oil, mostly at about half the speed of turning.',
  },
  { word: 'stiffness', meaning: 'How much push it takes to move the spindle by a given amount.' },
  {
    word: 'warm-up',
    forms: ['warms'],
    meaning:
      'From a cold start friction heats oil and parts, the oil thins, and the parts grow, until as much heat leaves as is made.',
  },
  {
    word: 'growth',
    meaning: 'Parts become larger as they warm. Where journal and bush grow unalike the films change.',
  },
  { word: 'expansion', meaning: 'How much a metal grows for each degree it warms.' },
  { word: 'seizes', forms: ['seize'], meaning: 'Metal meets metal as it turns, tears, and jams.' },
  {
    word: 'supply groove',
    forms: ['groove', 'grooves', 'supply grooves'],
    meaning: 'A channel cut in a seat that brings oil to it.',
  },
  {
    word: 'tilt',
    forms: ['tilts', 'tilted'],
    meaning: 'The axis of the journal leans against that of the bush.',
  },
];

const CUTTING: readonly Entry[] = [
  { word: 'stock', meaning: 'Metal that is to come off a surface, measured square to it.' },
  {
    word: 'cleanup',
    meaning: 'The least stock that makes a surface whole: with less, parts of the old one stay uncut.',
  },
  {
    word: 'cross feed',
    forms: ['cross-feed', 'cross feeds'],
    meaning: 'Moving the tool or wheel straight toward the axis. Its dial says how far.',
  },
  { word: 'axial feed', forms: ['axial feeds'], meaning: 'Moving the tool or wheel along the axis.' },
  {
    word: 'dial',
    forms: ['dials', 'division', 'divisions'],
    meaning: 'The ring on a feed screw. One division is the step from one of its marks to the next.',
  },
  { word: 'pass', forms: ['passes'], meaning: 'One run of the tool or wheel over the surface.' },
  { word: 'wheel', meaning: 'The grinding wheel.' },
  {
    word: 'slide',
    meaning:
      'The part of the machine that carries tool or wheel along a straight way. Its angle is the angle of the cone.',
  },
  {
    word: 'tailstock',
    meaning: 'The body at the other end of the lathe. Set over sideways, it turns a cone of small angle.',
  },
  {
    word: 'set-up',
    forms: ['set-ups'],
    meaning: 'How part, tool and machine are placed for one piece of work. Each has its own errors.',
  },
  {
    word: 'trial',
    forms: ['trials', 'trial assembly'],
    meaning:
      'Putting the parts together before the last cut, clean and dry, to read how they stand and where they bear.',
  },
  {
    word: 'lapping',
    forms: ['lap', 'lapped', 'laps'],
    meaning: 'Rubbing a surface with fine grit on a shape that fits it. It takes very little metal.',
  },
  {
    word: 'dresser',
    forms: ['dress', 'dressing'],
    meaning: 'The diamond that trues the wheel: the wheel takes the line it is led along.',
  },
  { word: 'spark out', meaning: 'To let the wheel go over the work with no more feed, until it throws no sparks.' },
  { word: 'hone', meaning: 'To rub lightly with a fine stone.' },
  { word: 'centres', meaning: 'Two points, one at each end of a part, between which it turns.' },
  { word: 'flank', meaning: 'The line of a cone from one end to the other, as it was cut.' },
  { word: 'grit', meaning: 'The fine hard grains that do the cutting in lapping.' },
  {
    word: 'case',
    forms: ['case depth'],
    meaning: 'The hard skin of a hardened part. Cut through it, the surface is soft.',
  },
  { word: 'wear', forms: ['worn'], meaning: 'Metal lost by rubbing.' },
];

export const GLOSSARY: readonly Chapter[] = [
  { title: 'The pair', entries: THE_PAIR },
  { title: 'How it fits', entries: THE_FIT },
  { title: 'Measuring', entries: MEASURING },
  { title: 'How sure', entries: HOW_SURE },
  { title: 'Running', entries: RUNNING },
  { title: 'Cutting', entries: CUTTING },
];
