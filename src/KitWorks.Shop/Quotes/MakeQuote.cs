using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Kits.Planning;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Planning;
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

/// <summary>Whether stock covers a quote, when it can leave, and what it waits for until then.</summary>
public sealed record Availability(bool FromStock, IReadOnlyList<Shortage> Shortages, DateOnly ShipBy, IReadOnlyList<WaitsFor> WaitsFor);

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
        if (!Price.Of(kit, command.Quantity, catalog).Succeeds(out var price, out refusal)) return refusal;
        var now = clock.Moment();
        var quote = new Quote
        {
            Id = Guid.CreateVersion7(now),
            Owner = call.Actor,
            Quantity = command.Quantity,
            Kit = StoredJson.Pack(kit),
            Price = StoredJson.Write(price),
            MadeAt = now,
            ExpiresAt = now + Validity,
        };
        return await mediator.Send(new KeepQuote(quote, kit), cancellationToken);
    }

    public static async Task<Outcome<QuoteAnswer>> Answer(Quote quote, Kit kit, IMediator mediator, CancellationToken cancellationToken)
    {
        if (!(await mediator.Send(FindShipDate.Of(kit, quote.Quantity), cancellationToken)).Succeeds(out var promise, out var refusal)) return refusal;
        return new QuoteAnswer(
            quote.Id, quote.Quantity, kit, StoredJson.Read<Price>(quote.Price),
            new(promise.Shortages.Count == 0, promise.Shortages, promise.Date.ShipBy, promise.Date.WaitsFor), quote.ExpiresAt);
    }
}

/// <summary>Keeps a quote that is made.</summary>
sealed record KeepQuote(Quote Quote, Kit Kit) : ICommand<QuoteAnswer>;

sealed class KeepQuoteHandler(ShopDb db, IMediator mediator) : IRequestHandler<KeepQuote, Outcome<QuoteAnswer>>
{
    public Task<Outcome<QuoteAnswer>> Handle(KeepQuote command, CancellationToken cancellationToken)
    {
        db.Quotes.Add(command.Quote);
        return MakeQuoteHandler.Answer(command.Quote, command.Kit, mediator, cancellationToken);
    }
}

sealed class GetQuoteHandler(ShopDb db, IMediator mediator, Call call) : IRequestHandler<GetQuote, Outcome<QuoteAnswer>>
{
    public async Task<Outcome<QuoteAnswer>> Handle(GetQuote query, CancellationToken cancellationToken)
    {
        var quote = await db.Quotes.AsNoTracking()
            .FirstOrDefaultAsync(q => q.Id == query.Id && (call.SeesOnly == null || q.Owner == call.SeesOnly), cancellationToken);
        if (quote is null) return new Refusal(RefusalKind.NotFound, "quote.unknown", $"There is no quote '{query.Id}' for this key.");
        return await MakeQuoteHandler.Answer(quote, StoredJson.Unpack<Kit>(quote.Kit), mediator, cancellationToken);
    }
}
