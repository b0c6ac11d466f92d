using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Kits;
using KitWorks.Shop.Catalog;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Quotes;
using MediatR;

namespace KitWorks.Shop.Orders;

/// <summary>
/// Orders a quote or a design: makes its kit, and takes the order with <see cref="TakeOrder"/>.
/// </summary>
public sealed record PlaceOrder : IPreparedCommand<OrderAnswer>
{
    /// <summary>The quote that is ordered; null where a design is given.</summary>
    public Guid? QuoteId { get; init; }

    /// <summary>The design that is ordered; null where a quote is given.</summary>
    public Design? Design { get; init; }

    /// <summary>How many kits; null for the quote's number, or one.</summary>
    public int? Quantity { get; init; }

    /// <summary>Who it is for.</summary>
    public required Customer Customer { get; init; }

    /// <summary>The caller's own number for it.</summary>
    public string? Reference { get; init; }

    /// <summary>What to do when stock is short.</summary>
    public WhenShort WhenShort { get; init; } = WhenShort.Wait;
}

sealed class PlaceOrderValidator : AbstractValidator<PlaceOrder>
{
    public PlaceOrderValidator()
    {
        RuleFor(c => c.QuoteId).Must((c, _) => c.QuoteId is null != c.Design is null).WithMessage("Give either quoteId or design.");
        RuleFor(c => c.Quantity).InclusiveBetween(1, 100).WithMessage("'{PropertyValue}' kits cannot be ordered; it is 1 to 100.");
        RuleFor(c => c.Quantity).Null().When(c => c.QuoteId is not null).WithMessage("A quote has its quantity; leave it out.");
        RuleFor(c => c.Customer.Name).NotEmpty().WithMessage("Say who it is for.").MaximumLength(200).WithMessage("A name is at most 200 characters.")
            .Must(name => !name.Any(char.IsControl)).WithMessage("A name is one line, without control characters.");
        RuleFor(c => c.Customer.Email).MaximumLength(254).WithMessage("An e-mail address is at most 254 characters.")
            .EmailAddress().WithMessage("'{PropertyValue}' is not an e-mail address.");
        RuleFor(c => c.Customer.Address).MaximumLength(1000).WithMessage("An address is at most 1,000 characters.")
            .Must(address => address is null || address.All(c => c == '\n' || !char.IsControl(c))).WithMessage("An address has lines, and no other control characters.");
        RuleFor(c => c.Reference).MaximumLength(100).WithMessage("A reference is at most 100 characters.")
            .Must(reference => reference is null || !reference.Any(char.IsControl)).WithMessage("A reference is one line, without control characters.");
    }
}

sealed class PlaceOrderHandler(IMediator mediator, TimeProvider clock) : IRequestHandler<PlaceOrder, Outcome<OrderAnswer>>
{
    public async Task<Outcome<OrderAnswer>> Handle(PlaceOrder command, CancellationToken cancellationToken)
    {
        if (!(await WhatIsOrdered(command, cancellationToken)).Succeeds(out var ordered, out var refusal)) return refusal;
        var (kit, price, quantity) = ordered;
        return await mediator.Send(new TakeOrder(kit, price, quantity, command.Customer, command.Reference, command.WhenShort), cancellationToken);
    }

    async Task<Outcome<(Kit, Price, int)>> WhatIsOrdered(PlaceOrder command, CancellationToken cancellationToken)
    {
        if (command.QuoteId is { } id)
        {
            if (!(await mediator.Send(new GetQuote(id), cancellationToken)).Succeeds(out var quote, out var unknown))
                return unknown with { Kind = RefusalKind.Impossible, Errors = [new("quoteId", unknown.Detail)] };
            return quote.ExpiresAt > clock.GetUtcNow()
                ? (quote.Kit, quote.Price, quote.Quantity)
                : new Refusal(RefusalKind.Conflict, "quote.expired", $"The quote expired at {quote.ExpiresAt:u}. Ask for a new one.");
        }
        if (!(await mediator.Send(new GetCatalog(), cancellationToken)).Succeeds(out var catalog, out var refusal)) return refusal;
        var quantity = command.Quantity ?? 1;
        return Kit.Make(command.Design!, catalog).Under("design").Then(kit => Price.Of(kit, quantity, catalog).Select(price => (kit, price, quantity)));
    }
}
