import { GroundFields } from './GroundFields.tsx';
import { KitChoice } from './KitChoice.tsx';
import type { Design } from './useDesign.ts';

/** Kit and ground, to be filled in. `strict` also says what is missing. */
export function DesignFields({
  design,
  strict,
}: {
  readonly design: Design;
  readonly strict: boolean;
}) {
  const { kits, wish } = design;
  return (
    <>
      <KitChoice
        kits={kits.kits}
        chosen={kits.listed?.name ?? ''}
        onChoose={design.chooseKit}
        unreachable={kits.unreachable}
        again={kits.again}
        wish={design.typedWish}
        wishFault={wish.ok ? null : wish.reason}
        onWish={design.setWish}
      />
      <GroundFields
        form={design.form}
        faults={design.faults}
        decide={design.facts.decide}
        strict={strict}
        onChange={design.change}
      />
    </>
  );
}
