import { usePattern } from '../../document/use-design.ts';
import { LengthField, type LengthFieldProps } from '../../parts/LengthField.tsx';
import { PixelField } from '../../parts/PixelField.tsx';

/** The size of something drawn: a length, or pixels where the pattern's scale is not known. */
export function SizeField(field: Pick<LengthFieldProps, 'label' | 'value' | 'onChange'>) {
  const { unit } = usePattern();
  return unit === 'mm' ? <LengthField {...field} /> : <PixelField {...field} isSize />;
}
