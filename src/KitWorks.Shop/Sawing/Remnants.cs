using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Kits.Packing;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Sawing;

/// <summary>The remnants on the shelf or taken by batches, by code; of one pipe or all.</summary>
public sealed record ListRemnants(int Limit, string? After, string? PipeSku = null) : IQuery<Page<RemnantAnswer>>;

/// <summary>The remnants on the shelf that a batch has left.</summary>
public sealed record RemnantsOfBatch(int Batch) : IQuery<IReadOnlyList<RemnantAnswer>>;

/// <summary>Puts offcuts on the shelf that no batch has left.</summary>
public sealed record ShelveRemnants(string PipeSku, Length Length, int Count, string Bin) : ICommand<IReadOnlyList<RemnantAnswer>>;

/// <summary>A remnant is not there, or not worth keeping any more.</summary>
public sealed record ScrapRemnant(string Code) : ICommand<RemnantAnswer>;

/// <summary>An offcut with a label of its own.</summary>
/// <param name="Code">The code on its label.</param>
/// <param name="PipeSku">The stock code of the pipe it was cut from.</param>
/// <param name="Length">Its length.</param>
/// <param name="Status">Where it is.</param>
/// <param name="Bin">Where it is kept.</param>
/// <param name="FromBatch">The batch that left it.</param>
/// <param name="ForBatch">The batch that takes it.</param>
public sealed record RemnantAnswer(string Code, string PipeSku, Length Length, RemnantStatus Status, string Bin, int? FromBatch, int? ForBatch)
{
    internal static RemnantAnswer Of(ShelvedRemnant r) => new(r.Code, r.PipeSku, Length.FromTenths(r.LengthTenths), r.Status, r.Bin, r.FromBatch, r.ForBatch);
}

sealed class ShelveRemnantsValidator : AbstractValidator<ShelveRemnants>
{
    public ShelveRemnantsValidator()
    {
        RuleFor(c => c.Length).Must(l => l.Millimetres is >= 10 and <= 20_000).WithMessage("A remnant is 10 mm to 20 m long.");
        RuleFor(c => c.Count).InclusiveBetween(1, 500).WithMessage("'{PropertyValue}' remnants at once: 1 to 500.");
        RuleFor(c => c.Bin).MaximumLength(40).WithMessage("A bin's name is at most 40 characters.");
    }
}

sealed class ListRemnantsHandler(ShopDb db) : IRequestHandler<ListRemnants, Outcome<Page<RemnantAnswer>>>
{
    public async Task<Outcome<Page<RemnantAnswer>>> Handle(ListRemnants query, CancellationToken cancellationToken)
    {
        var after = query.After ?? "";
        var remnants = await db.Remnants.AsNoTracking()
            .Where(r => r.Status != RemnantStatus.Gone && (query.PipeSku == null || r.PipeSku == query.PipeSku) && string.Compare(r.Code, after) > 0)
            .OrderBy(r => r.Code).Take(query.Limit + 1).ToListAsync(cancellationToken);
        return Pages.Of(remnants.ConvertAll(RemnantAnswer.Of), query.Limit, r => r.Code);
    }
}

sealed class RemnantsOfBatchHandler(ShopDb db) : IRequestHandler<RemnantsOfBatch, Outcome<IReadOnlyList<RemnantAnswer>>>
{
    public async Task<Outcome<IReadOnlyList<RemnantAnswer>>> Handle(RemnantsOfBatch query, CancellationToken cancellationToken) =>
        (await db.Remnants.AsNoTracking().Where(r => r.FromBatch == query.Batch && r.Status != RemnantStatus.Gone).OrderBy(r => r.Code).ToListAsync(cancellationToken))
        .ConvertAll(RemnantAnswer.Of);
}

sealed class ShelveRemnantsHandler(ShopDb db, IMediator mediator) : IRequestHandler<ShelveRemnants, Outcome<IReadOnlyList<RemnantAnswer>>>
{
    public async Task<Outcome<IReadOnlyList<RemnantAnswer>>> Handle(ShelveRemnants command, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new KnownItems([command.PipeSku]), cancellationToken)).Succeeds(out _, out var refusal))
            return refusal with { Errors = [new("pipeSku", refusal.Detail)] };
        var remnants = new List<RemnantAnswer>();
        for (var i = 0; i < command.Count; i++) remnants.Add(await db.Shelve(command.PipeSku, command.Length, command.Bin, null, cancellationToken));
        return remnants;
    }
}

sealed class ScrapRemnantHandler(ShopDb db) : IRequestHandler<ScrapRemnant, Outcome<RemnantAnswer>>
{
    public async Task<Outcome<RemnantAnswer>> Handle(ScrapRemnant command, CancellationToken cancellationToken)
    {
        if (await db.Remnants.FirstOrDefaultAsync(r => r.Code == command.Code, cancellationToken) is not { } remnant)
            return new Refusal(RefusalKind.NotFound, "remnant.unknown", $"There is no remnant '{command.Code}'.");
        if (remnant.Status != RemnantStatus.Shelved)
            return new Refusal(RefusalKind.Conflict, "remnant.status", remnant.Status == RemnantStatus.Gone
                ? $"Remnant {remnant.Code} is gone already." : $"Remnant {remnant.Code} is taken by batch {remnant.ForBatch}; dissolve the batch first.");
        remnant.Status = RemnantStatus.Gone;
        return RemnantAnswer.Of(remnant);
    }
}

static class SawStock
{
    /// <summary>Puts a remnant on the shelf, under a code that was never used before.</summary>
    public static async Task<RemnantAnswer> Shelve(this ShopDb db, string pipeSku, Length length, string bin, int? batch, CancellationToken cancellationToken)
    {
        var number = await db.TakeNumbers(CounterQueries.Remnant, 1, cancellationToken);
        var remnant = new ShelvedRemnant { Code = RemnantCode.Of(number), PipeSku = pipeSku, LengthTenths = length.Tenths, Bin = bin, FromBatch = batch };
        db.Remnants.Add(remnant);
        return RemnantAnswer.Of(remnant);
    }

    /// <summary>Puts struts ready cut on the shelf.</summary>
    public static async Task AddReady(this ShopDb db, string pipeSku, Length length, int count, CancellationToken cancellationToken)
    {
        if (await db.ReadyStruts.FirstOrDefaultAsync(s => s.PipeSku == pipeSku && s.LengthTenths == length.Tenths, cancellationToken) is { } there)
        {
            // Batches change the number past the context, which would go on answering with what it read first.
            await db.Entry(there).ReloadAsync(cancellationToken);
            there.OnHand += count;
        }
        else db.ReadyStruts.Add(new() { PipeSku = pipeSku, LengthTenths = length.Tenths, OnHand = count });
        await db.SaveChangesAsync(cancellationToken);
    }
}
