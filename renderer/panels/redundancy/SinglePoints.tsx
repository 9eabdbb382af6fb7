import { Button } from 'react-aria-components';
import type { Project } from '../../../core/model/project.ts';
import type { Redundancy } from '../../../core/redundancy/types.ts';
import { serviceOf } from '../../../core/report/words.ts';
import { useAppStore } from '../../store/context.ts';
import { componentWords, singlePointsOf } from './words.ts';

/** Everything that alone takes a service away, and what it takes. */
export function SinglePoints({ project, redundancy }: { project: Project; redundancy: Redundancy }) {
  const store = useAppStore();
  const points = singlePointsOf(redundancy);
  if (points.length === 0) {
    return (
      <section className="panel-section">
        <h3 className="heading">Single points of failure</h3>
        <p className="small">None: every service has a second way.</p>
      </section>
    );
  }
  return (
    <section className="panel-section">
      <h3 className="heading">Single points of failure</h3>
      <p className="small soft">Each of these alone takes away the services beside it; what takes most comes first.</p>
      <table className="table single-points">
        <thead className="sr-only">
          <tr>
            <th scope="col">Part</th>
            <th scope="col">Services it takes away</th>
          </tr>
        </thead>
        <tbody>
          {points.map(({ component, serviceIds }) => (
            <tr key={component.id}>
              <th scope="row">
                <Button className="button link" onPress={() => store.getState().select([component.subject])}>
                  {component.label}
                </Button>{' '}
                <span className="soft">{componentWords(project, component)}</span>
              </th>
              <td>
                {serviceIds.map((id) => (
                  <abbr key={id} className="chip" title={serviceOf(id).name}>
                    {serviceOf(id).code}
                  </abbr>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
