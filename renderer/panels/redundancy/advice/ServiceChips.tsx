import type { ServiceId } from '../../../../core/model/services.ts';
import { serviceOf } from '../../../../core/report/words.ts';

/** Codes of services, each with its name behind it. */
export function ServiceChips({ serviceIds }: { serviceIds: readonly ServiceId[] }) {
  return (
    <span className="advice-chips">
      {serviceIds.map((id) => (
        <abbr key={id} className="chip" title={serviceOf(id).name}>
          {serviceOf(id).code}
        </abbr>
      ))}
    </span>
  );
}
