using System.Globalization;

namespace KitWorks.Shop.Printing.Ipp;

/// <summary>The statuses of RFC 8011, appendix B, that the shop acts on.</summary>
static class IppStatus
{
    public const ushort NotFound = 0x0406, Busy = 0x0507;

    /// <summary>The printer broke down over it, and may have begun: internal error, device error.</summary>
    public static bool IsBreakdown(int code) => code is 0x0500 or 0x0504;

    /// <summary>Nothing was taken, and it may be taken later: service unavailable, temporary error, not accepting jobs, busy.</summary>
    public static bool IsPassing(int code) => code is 0x0502 or 0x0505 or 0x0506 or 0x0507;
}

/// <summary>What printers say, in words for the bench.</summary>
static class IppWords
{
    static readonly Dictionary<string, string> Reasons = new(StringComparer.Ordinal)
    {
        ["media-empty"] = "paper out",
        ["media-needed"] = "paper needed",
        ["media-jam"] = "paper jam",
        ["media-low"] = "paper low",
        ["cover-open"] = "cover open",
        ["door-open"] = "door open",
        ["interlock-open"] = "cover open",
        ["toner-empty"] = "toner empty",
        ["toner-low"] = "toner low",
        ["marker-supply-empty"] = "ink or ribbon empty",
        ["marker-supply-low"] = "ink or ribbon low",
        ["output-area-full"] = "output tray full",
        ["spool-area-full"] = "printer's memory full",
        ["input-tray-missing"] = "paper tray missing",
        ["paused"] = "paused at the printer",
        ["offline"] = "printer offline",
        ["shutdown"] = "printer switched off",
        ["timed-out"] = "printer does not answer its queue",
        ["connecting-to-device"] = "queue is looking for its printer",
        ["aborted-by-system"] = "the printer gave up",
        ["document-format-error"] = "the printer cannot read the document",
        ["job-canceled-by-user"] = "cancelled",
        ["job-canceled-by-operator"] = "cancelled at the printer",
        ["job-canceled-at-device"] = "cancelled at the printer",
    };

    // These say nothing that the job's status does not.
    static readonly string[] Idle = ["none", "job-printing", "job-completed-successfully", "job-incoming", "job-queued", "job-data-insufficient", "processing-to-stop-point", "job-transforming"];

    /// <summary>The reasons that mean something, without their severities.</summary>
    public static IReadOnlyList<string> Codes(IEnumerable<string> keywords) =>
        [.. keywords.Select(WithoutSeverity).Where(k => !Idle.Contains(k) && k.Length is > 0 and <= 60 && !k.Contains(',', StringComparison.Ordinal)).Distinct().Take(8)];

    public static string Reason(string code) => Reasons.GetValueOrDefault(code) ?? code.Replace('-', ' ');

    static string WithoutSeverity(string keyword)
    {
        foreach (var severity in (string[])["-report", "-warning", "-error"])
            if (keyword.EndsWith(severity, StringComparison.Ordinal) && keyword != "document-format-error") return keyword[..^severity.Length];
        return keyword;
    }

    /// <summary>A status in words, with what the printer adds to a no.</summary>
    public static string Status(IppMessage answer)
    {
        if (answer.Code <= 0x00FF) return "taken";
        var unsupported = string.Join(", ", answer.Attributes.Where(a => a.Group == IppTag.UnsupportedAttributes).Select(a => $"{a.Name} {a.Values[0].Text}"));
        var words = answer.Code switch
        {
            0x0401 or 0x0402 or 0x0403 => "the printer asks for a password",
            IppStatus.NotFound => "nothing prints at this address",
            0x0408 => "the document is too large for the printer",
            0x040A or 0x040B => "the printer does not take this document as it is",
            0x0501 => "the printer cannot do this",
            0x0506 => "the printer takes no jobs now",
            IppStatus.Busy => "the printer is busy",
            _ => string.Create(CultureInfo.InvariantCulture, $"the printer refused, status 0x{answer.Code:X4}"),
        };
        var added = unsupported.Length > 0 ? unsupported : answer.Text("status-message") ?? "";
        return added.Length == 0 ? words : $"{words} ({added[..Math.Min(added.Length, 120)]})";
    }
}
