/** Stages of the work as a person calls them. */
import type { STAGES } from '../../design/recordDefinition.ts';

type Stage = (typeof STAGES)[number];

export const STAGE_NAMES: Record<Stage, string> = {
  received: 'as received',
  pressed: 'pressed in',
  ground: 'ground',
  lapped: 'lapped',
};

/** Words of one's own stand as they are. */
export const stageText = (stage: string): string => STAGE_NAMES[stage as Stage] ?? stage;
