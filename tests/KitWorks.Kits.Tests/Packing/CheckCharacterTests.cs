using CsCheck;
using KitWorks.Kits.Packing;

namespace KitWorks.Kits.Tests.Packing;

public sealed class CheckCharacterTests
{
    const string Alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ";

    static readonly Gen<string> Codes = Gen.Char[Alphabet].Array[1, 20].Select(c => CheckCharacter.Append(new string(c)));

    // GRid: the example of the Global Release Identifier, as in the article of that name on Wikipedia (en.wikipedia.org, read there);
    // a GRid's check character is ISO 7064 MOD 37,36.
    // 123AB: the manual of an integration product, lobster-world.com, "checksum ISO 7064 Mod. 37/36".
    // ISAN: B159-D8FA-0124-0000-K, 1881-66C7-3420-0000-3 and 0000-3BAB-9352-0000-G, in the tests of several open-source ISAN
    // libraries (org.xbib standardnumber among them). The standard's own worked example was not at hand.
    [Theory]
    [InlineData("A12425GABC1234002", 'M')]
    [InlineData("123AB", 'X')]
    [InlineData("B159D8FA01240000", 'K'), InlineData("188166C734200000", '3'), InlineData("00003BAB93520000", 'G')]
    // By hand, the recursion of the hybrid systems: one '0': (36 + 0) mod 36 → 36; 2 · 36 mod 37 = 35; 37 − 35 = 2.
    [InlineData("0", '2')]
    public void Append_WhenPublishedExample_GivesItsCharacter(string text, char check)
    {
        Assert.Equal(text + check, CheckCharacter.Append(text));
        Assert.True(CheckCharacter.IsValid(text + check));
        Assert.All(Alphabet.Where(c => c != check), c => Assert.False(CheckCharacter.IsValid(text + c)));
    }

    [Fact]
    public void IsValid_WhenAnyOneCharacterIsWrong_IsFalse() =>
        Gen.Select(Codes, Gen.Int[0, 20], Gen.Int[1, 35]).Sample((code, at, by) =>
        {
            at %= code.Length;
            var wrong = Alphabet[(Alphabet.IndexOf(code[at], StringComparison.Ordinal) + by) % 36];
            return CheckCharacter.IsValid(code) && !CheckCharacter.IsValid(code[..at] + wrong + code[(at + 1)..]);
        }, iter: 20_000);

    // A swap of neighbours slips through in few cases; the check character doubles, so it can only where two products coincide.
    [Fact]
    public void IsValid_WhenNeighboursAreSwapped_IsNearlyAlwaysFalse()
    {
        int swaps = 0, missed = 0;
        foreach (var before in Alphabet)
            foreach (var a in Alphabet)
                foreach (var b in Alphabet.Where(b => b != a))
                {
                    swaps++;
                    if (CheckCharacter.Append($"{before}{a}{b}7")[^1] == CheckCharacter.Append($"{before}{b}{a}7")[^1]) missed++;
                }

        Assert.InRange(missed, 0, swaps / 500);
    }

    [Fact]
    public void IsValid_WhenNeighboursOfARandomCodeAreSwapped_IsNearlyAlwaysFalse()
    {
        int swaps = 0, missed = 0;
        Gen.Select(Codes, Gen.Int[0, 20]).Sample((code, at) =>
        {
            at %= code.Length - 1;
            if (code[at] == code[at + 1]) return;
            Interlocked.Increment(ref swaps);
            if (CheckCharacter.IsValid($"{code[..at]}{code[at + 1]}{code[at]}{code[(at + 2)..]}")) Interlocked.Increment(ref missed);
        }, iter: 50_000);

        Assert.InRange(missed, 0, swaps / 100);
    }

    [Theory]
    [InlineData(""), InlineData("7"), InlineData("a12425GABC1234002M"), InlineData("A1-2425G-ABC1234002-M"), InlineData("A12425GABC1234002M ")]
    public void IsValid_WhenNotACodeOfDigitsAndCapitals_IsFalse(string text) => Assert.False(CheckCharacter.IsValid(text));

    [Theory]
    [InlineData(""), InlineData("a"), InlineData("1-2"), InlineData("Å")]
    public void Append_WhenNotDigitsAndCapitals_Throws(string text) => Assert.Throws<ArgumentException>(() => CheckCharacter.Append(text));
}
