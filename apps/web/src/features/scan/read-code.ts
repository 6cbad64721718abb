import { prepareZXingModule, readBarcodes, type ReaderOptions } from 'zxing-wasm/reader'
import wasmAddress from 'zxing-wasm/reader/zxing_reader.wasm?url'

/** The reader comes from our own origin, so that it is there without a network once the app is installed. */
const ready = prepareZXingModule({
  overrides: { locateFile: (path: string) => (path.endsWith('.wasm') ? wasmAddress : path) },
  fireImmediately: true,
})

const labels: ReaderOptions = { formats: ['QRCode', 'DataMatrix'], tryHarder: true, maxNumberOfSymbols: 1 }
const boxes: ReaderOptions = { ...labels, formats: ['QRCode', 'DataMatrix', 'AllLinear'] }

/** The text of the first code in a picture, or null; `boxes` also takes the bar codes on makers' boxes. */
export async function readCode(picture: ImageData, kinds: 'labels' | 'boxes'): Promise<string | null> {
  await ready
  const [found] = await readBarcodes(picture, kinds === 'boxes' ? boxes : labels)
  return found?.isValid ? found.text : null
}
