import { Header, Menu, MenuItem, MenuSection, Separator } from 'react-aria-components';
import { swapAlternative } from '../../core/edit/alternatives.ts';
import { useApp, useAppStore } from '../store/context.ts';
import { ActionItem } from './ActionItem.tsx';
import { actionById } from './actions.ts';
import { MenuButton } from './MainMenu.tsx';

/** Which layout of the boat is on the sheet, the others kept beside it, and keeping a copy of this one. */
export function LayoutSwitch() {
  const store = useAppStore();
  const layoutName = useApp((state) => state.project.layoutName);
  const alternatives = useApp((state) => state.project.alternatives);
  const show = (id: string, name: string): void => {
    store.getState().edit(`Layout ${name} shown`, (project) => swapAlternative(project, id));
  };
  return (
    <MenuButton name={`Layout: ${layoutName}`}>
      <Menu aria-label="Layout">
        <MenuSection selectionMode="single" disallowEmptySelection selectedKeys={['current']}>
          <Header>Layouts of this boat</Header>
          <MenuItem id="current">{layoutName}</MenuItem>
          {alternatives.map(({ id, name }) => (
            <MenuItem key={id} id={id} onAction={() => show(id, name)}>
              {name}
            </MenuItem>
          ))}
        </MenuSection>
        <Separator />
        <ActionItem action={actionById('keep-copy')} />
      </Menu>
    </MenuButton>
  );
}
