using System.Globalization;
using System.Text;

namespace KitWorks.Shop.Orders;

/// <summary>A picklist as comma-separated values (RFC 4180).</summary>
public static class PicklistCsv
{
    /// <summary>The whole list with a line of headings.</summary>
    public static string Write(Picklist picklist)
    {
        var csv = new StringBuilder("tier,bin,sku,code,description,tag,quantity\r\n");
        foreach (var line in picklist.Lines)
            csv.AppendJoin(',',
                line.Tier.ToString(CultureInfo.InvariantCulture), Cell(line.Bin), Cell(line.Sku), Cell(line.Code ?? ""), Cell(line.Description),
                Cell(line.Tag is { } tag ? $"{tag.Colour}, {tag.Bands} band{(tag.Bands == 1 ? "" : "s")}" : ""), line.Quantity.ToString(CultureInfo.InvariantCulture))
                .Append("\r\n");
        return csv.ToString();
    }

    /// <summary>Quoted where it must be, and never a formula to the spreadsheet that opens it.</summary>
    static string Cell(string text)
    {
        if (text.Length > 0 && "=+-@\t\r".Contains(text[0], StringComparison.Ordinal)) text = "'" + text;
        return text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
