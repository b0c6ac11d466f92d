using System.Text.RegularExpressions;
using KitWorks.Geometry;

namespace KitWorks.Api.Http;

/// <summary>What a parameter that could not be read gets told: which it is, and what would be right.</summary>
static partial class UnreadableParameter
{
    const int LongestValue = 60;

    [GeneratedRegex("^Failed to bind parameter \"(?<type>.+) (?<name>[A-Za-z]+)\" from \"(?<value>.*)\"[.]$", RegexOptions.Singleline)]
    private static partial Regex FailedToBind();

    /// <summary>The refusal, or null where it was something else that could not be read.</summary>
    public static Refusal? Refuse(BadHttpRequestException bad)
    {
        if (FailedToBind().Match(bad.Message) is not { Success: true } match) return null;
        var (type, name, value) = (match.Groups["type"].Value, match.Groups["name"].Value, match.Groups["value"].Value);
        name = char.ToLowerInvariant(name[0]) + name[1..];
        var form = type switch
        {
            _ when type.Contains("int", StringComparison.Ordinal) => "a whole number, up to 2147483647",
            _ when type.Contains("double", StringComparison.Ordinal) || type.Contains("decimal", StringComparison.Ordinal) => "a number",
            _ when type.Contains("bool", StringComparison.Ordinal) => "true or false",
            _ when type.Contains("Guid", StringComparison.Ordinal) => "an id as an answer gave it, such as 0193a1b2-0000-7000-8000-000000000001",
            _ => "of another form; see /docs",
        };
        var detail = $"{name} is '{(value.Length <= LongestValue ? value : value[..LongestValue] + "…")}'; it is {form}.";
        return new(RefusalKind.Malformed, "request.malformed", detail) { Errors = [new(name, detail)] };
    }
}
