using System.Collections.Concurrent;
using KitWorks.Geometry;

namespace KitWorks.Labels.Codes;

/// <summary>
/// The latest symbols. Encoding a QR code costs more than drawing the rest of its label, and every document goes through
/// its labels twice.
/// </summary>
sealed class SymbolShelf
{
    const int Kept = 4096;

    readonly ConcurrentDictionary<(string, string), Symbol> symbols = new();

    public Outcome<Symbol> Encode(string symbology, string text)
    {
        if (symbols.TryGetValue((symbology, text), out var known)) return known;
        var outcome = Symbology.Encode(symbology, text);
        if (!outcome.Succeeds(out var symbol, out _)) return outcome;
        if (symbols.Count >= Kept) symbols.Clear();
        return symbols[(symbology, text)] = symbol;
    }
}
