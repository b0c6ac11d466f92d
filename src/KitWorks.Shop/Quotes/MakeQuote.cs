using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.EntityFrameworkCore;

namespace KitWorks.Shop.Quotes;

/// <summary>Asks what a number of kits costs and when they can leave.</summary>
public sealed record MakeQuote(Design Design, int Quantity, string? Currency = null) : IPreparedCommand<QuoteAnswer>;

/// <summary>A quote that was made before.</summary>
public sealed record GetQuote(Guid Id) : IQuery<QuoteAnswer>;

/// <summary>A quote. Kit and price stand until it expires; availability is of this moment.</summary>
public sealed record QuoteAnswer(Guid Id, int Quantity, Kit Kit, Price Price, Availability Availability, DateTimeOffset ExpiresAt);

/// <summary>Whether stock covers a quote, and when it can leave.</summary>
public sealed record Availability(bool FromStock, IReadOnlyList<Shortage> Shortages, DateOnly ShipBy);

sealed class MakeQuoteValidator : AbstractValidator<MakeQuote>
{
    public MakeQuoteValidator() =>
        RuleFor(c => c.Quantity).InclusiveBetween(1, 100).WithMessage("'{PropertyValue}' kits cannot be quoted; it is 1 to 100.");
}

sealed class MakeQuoteHandler(IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<MakeQuote, Outcome<QuoteAnswer>>
{
    /// <summary>How long the shop stands by a quote.</summary>
    public static readonly TimeSpan Validity = TimeSpan.FromDays(14);

    public async Task<Outcome<QuoteAnswer>> Handle(MakeQuote command, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        if (command.Currency is { } currency && currency != catalog.Prices.Currency)
            return Refusal.OfField("quote.currency", "currency", $"The shop's prices are in {catalog.Prices.Currency}, not {currency}.");
        if (!Kit.Make(command.Design, catalog).Under("design").Succeeds(out var kit, out refusal)) return refusal;
        var now = clock.Moment();
        var quote = new Quote
        {
            Id = Guid.CreateVersion7(now),
            Owner = call.Actor,
            Quantity = command.Quantity,
            Kit = StoredJson.Pack(kit),
            Price = StoredJson.Write(Price.Of(kit, command.Quantity, catalog.Prices)),
            MadeAt = now,
            ExpiresAt = now + Validity,
        };
        return await mediator.Send(new KeepQuote(quote, kit, catalog.Workshop), cancellationToken);
    }

    public static async Task<Outcome<QuoteAnswer>> Answer(
        Quote quote, Kit kit, Workshop workshop, IMediator mediator, TimeProvider clock, CancellationToken cancellationToken)
    {
        var lines = kit.Parts.Select(p => new StockLine(p.Sku, p.Quantity * quote.Quantity)).ToList();
        if (!(await mediator.Send(new FindShortages(lines), cancellationToken)).Succeeds(out var shortages, out var refusal)) return refusal;
        var days = workshop.LeadDays + (shortages.Count > 0 ? workshop.RestockDays : 0);
        return new QuoteAnswer(
            quote.Id, quote.Quantity, kit, StoredJson.Read<Price>(quote.Price),
            new(shortages.Count == 0, shortages, WorkingDays.After(DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime), days)), quote.ExpiresAt);
    }
}

/// <summary>Keeps a quote that is made.</summary>
sealed record KeepQuote(Quote Quote, Kit Kit, Workshop Workshop) : ICommand<QuoteAnswer>;

sealed class KeepQuoteHandler(ShopDb db, IMediator mediator, TimeProvider clock) : IRequestHandler<KeepQuote, Outcome<QuoteAnswer>>
{
    public Task<Outcome<QuoteAnswer>> Handle(KeepQuote command, CancellationToken cancellationToken)
    {
        db.Quotes.Add(command.Quote);
        return MakeQuoteHandler.Answer(command.Quote, command.Kit, command.Workshop, mediator, clock, cancellationToken);
    }
}

sealed class GetQuoteHandler(ShopDb db, IMediator mediator, Call call, TimeProvider clock) : IRequestHandler<GetQuote, Outcome<QuoteAnswer>>
{
    public async Task<Outcome<QuoteAnswer>> Handle(GetQuote query, CancellationToken cancellationToken)
    {
        var quote = await db.Quotes.AsNoTracking()
            .FirstOrDefaultAsync(q => q.Id == query.Id && (call.SeesOnly == null || q.Owner == call.SeesOnly), cancellationToken);
        if (quote is null) return new Refusal(RefusalKind.NotFound, "quote.unknown", $"There is no quote '{query.Id}' for this key.");
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        return await MakeQuoteHandler.Answer(quote, StoredJson.Unpack<Kit>(quote.Kit), catalog.Workshop, mediator, clock, cancellationToken);
    }
}

/// <summary>Days on which the shop works: Monday to Friday.</summary>
static class WorkingDays
{
    public static DateOnly After(DateOnly day, int days)
    {
        while (days > 0)
        {
            day = day.AddDays(1);
            if (day.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday)) days--;
        }
        return day;
    }
}
