using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace KitWorks.Geometry;

/// <summary>What kind of no a <see cref="Refusal"/> is.</summary>
public enum RefusalKind
{
    /// <summary>The request makes no sense as written.</summary>
    Malformed,

    /// <summary>The thing asked about does not exist, or not for this caller.</summary>
    NotFound,

    /// <summary>The request is fine but the present state forbids it.</summary>
    Conflict,

    /// <summary>The request is understood, and what it asks for cannot be.</summary>
    Impossible,

    /// <summary>The caller may not do this.</summary>
    Forbidden,
}

/// <summary>One field that was wrong.</summary>
/// <param name="Field">The path to the field, slash-separated, from the object refused: <c>size/floorDiameter</c>.</param>
/// <param name="Detail">What was wrong, with the value, and what would be right.</param>
public sealed record FieldError(string Field, string Detail);

/// <summary>An expected no: a stable code, and words that say what would be right.</summary>
/// <param name="Kind">The kind of no.</param>
/// <param name="Code">A stable, dotted code, for instance <c>shelter.cut-invalid</c>.</param>
/// <param name="Detail">A sentence for a person: what was wrong and what would be right.</param>
public sealed record Refusal(RefusalKind Kind, string Code, string Detail)
{
    /// <summary>The fields at fault, empty where the fault is in no one field.</summary>
    public ImmutableArray<FieldError> Errors { get; init; } = [];

    /// <summary>A refusal for one field, as <see cref="RefusalKind.Impossible"/>.</summary>
    public static Refusal OfField(string code, string field, string detail) =>
        new(RefusalKind.Impossible, code, detail) { Errors = [new(field, detail)] };

    /// <summary>The same refusal seen from an object that holds the refused one under <paramref name="prefix"/>.</summary>
    public Refusal Under(string prefix) => this with { Errors = [.. Errors.Select(e => e with { Field = $"{prefix}/{e.Field}" })] };
}

/// <summary>A value, or the <see cref="Geometry.Refusal"/> that says why there is none. The default value is neither and must not be used.</summary>
public readonly struct Outcome<T> : IOutcome<Outcome<T>>
{
    readonly T? value;

    Outcome(T? value, Refusal? refusal) => (this.value, Refusal) = (value, refusal);

    /// <summary>The refusal, or null where there is a value.</summary>
    public Refusal? Refusal { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">There is a refusal instead.</exception>
    public T Value => Refusal is null ? value! : throw new InvalidOperationException($"{Refusal.Code}: {Refusal.Detail}");

    /// <summary>True with the value, or false with the refusal.</summary>
    public bool Succeeds([MaybeNullWhen(false)] out T result, [NotNullWhen(false)] out Refusal? refusal)
    {
        (result, refusal) = (value, Refusal);
        return refusal is null;
    }

    /// <summary>The outcome of a further step, taken only where there is a value.</summary>
    public Outcome<TNext> Then<TNext>(Func<T, Outcome<TNext>> step) => Refusal is null ? step(value!) : Refusal;

    /// <summary>The value turned into another, where there is one.</summary>
    public Outcome<TNext> Select<TNext>(Func<T, TNext> selector) => Refusal is null ? selector(value!) : Refusal;

    /// <summary>The same outcome, with the fields of a refusal seen from an object that holds them under <paramref name="prefix"/>.</summary>
    public Outcome<T> Under(string prefix) => Refusal is null ? this : Refusal.Under(prefix);

    /// <inheritdoc/>
    public static Outcome<T> Refused(Refusal refusal) => new(default, refusal);

    /// <summary>A value.</summary>
    public static implicit operator Outcome<T>(T value) => new(value, null);

    /// <summary>A refusal.</summary>
    public static implicit operator Outcome<T>(Refusal refusal) => new(default, refusal);
}

/// <summary>What lets a generic step answer with a refusal without knowing the value's type.</summary>
public interface IOutcome<TSelf> where TSelf : IOutcome<TSelf>
{
    /// <summary>The refusal, or null where there is a value.</summary>
    Refusal? Refusal { get; }

    /// <summary>An outcome that is a refusal.</summary>
    static abstract TSelf Refused(Refusal refusal);
}
