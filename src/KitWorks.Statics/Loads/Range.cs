using System.Collections.Immutable;
using KitWorks.Geometry;

namespace KitWorks.Statics.Loads;

/// <summary>Whether the numbers of a load or of a check make sense.</summary>
static class Range
{
    public const string Code = "statics.factor-invalid";

    /// <summary>The refusal of those values that lie outside their range, both ends included; null where none does.</summary>
    public static Refusal? Fault(params ReadOnlySpan<(string Field, double? Value, double Least, double Most)> values)
    {
        var errors = ImmutableArray.CreateBuilder<FieldError>();
        foreach (var (field, value, least, most) in values)
            if (value is { } v && !(v >= least && v <= most))
                errors.Add(new(field, $"A value from {least} to {most} is needed, not {v}."));
        return errors.Count == 0 ? null : new(RefusalKind.Impossible, Code, errors[0].Detail) { Errors = errors.ToImmutable() };
    }
}
