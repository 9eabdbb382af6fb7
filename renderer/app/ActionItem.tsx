import { Button, Keyboard, MenuItem, Text, Tooltip, TooltipTrigger } from 'react-aria-components';
import { useHost } from '../host/context.ts';
import { useApp, useAppStore } from '../store/context.ts';
import type { Action } from './action.ts';
import { Icon, type IconName } from './icons.tsx';
import { shownChord } from './keys.ts';

/** A menu entry for an action, with its shortcut. */
export function ActionItem({ action, name }: { action: Action; name?: string }) {
  const store = useAppStore();
  const host = useHost();
  const isEnabled = useApp((state) => action.isEnabled(state));
  const text = name ?? action.name;
  const [chord] = action.keys;
  return (
    <MenuItem id={action.id} textValue={text} isDisabled={!isEnabled} onAction={() => void action.perform(store, host)}>
      <Text slot="label">{text}</Text>
      {chord ? <Keyboard>{shownChord(chord)}</Keyboard> : null}
    </MenuItem>
  );
}

/** A button with an icon for an action; its tooltip has the name and the shortcut. */
export function ActionButton({ action, icon }: { action: Action; icon: IconName }) {
  const store = useAppStore();
  const host = useHost();
  const isEnabled = useApp((state) => action.isEnabled(state));
  const [chord] = action.keys;
  return (
    <TooltipTrigger delay={500}>
      <Button
        className="button button--quiet button--icon"
        aria-label={action.name}
        isDisabled={!isEnabled}
        onPress={() => void action.perform(store, host)}
      >
        <Icon name={icon} />
      </Button>
      <Tooltip>{chord ? `${action.name} (${shownChord(chord)})` : action.name}</Tooltip>
    </TooltipTrigger>
  );
}
