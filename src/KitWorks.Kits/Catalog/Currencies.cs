namespace KitWorks.Kits.Catalog;

/// <summary>How finely a currency is paid.</summary>
public static class Currencies
{
    /// <summary>Without coins for parts of the unit: ISO 4217, list one, from memory.</summary>
    static readonly string[] None =
        ["BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "UYI", "VND", "VUV", "XAF", "XOF", "XPF"];

    /// <summary>With thousandths: ISO 4217, list one, from memory.</summary>
    static readonly string[] Three = ["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"];

    /// <summary>The decimals of the smallest amount that is paid in a currency: 2 for most.</summary>
    public static int Decimals(string code) => None.Contains(code) ? 0 : Three.Contains(code) ? 3 : 2;

    /// <summary>An amount as it is paid: to the currency's smallest, halves away from zero.</summary>
    public static decimal Round(decimal amount, string code) => Math.Round(amount, Decimals(code), MidpointRounding.AwayFromZero);
}
