using FluentValidation;
using KitWorks.Kits.Catalog;

namespace KitWorks.Shop.Catalog;

/// <summary>What a section of the catalog must be, so that every design made from it is a kit or a refusal, and never a fault.</summary>
sealed class PutCatalogValidator : AbstractValidator<PutCatalog>
{
    const int MostGrams = 1_000_000;

    public PutCatalogValidator()
    {
        RuleFor(c => c.HubSystems!).Must(s => s.DistinctBy(x => x.Code).Count() == s.Count).WithMessage("Two hub systems have one code.").When(c => c.HubSystems is not null);
        RuleForEach(c => c.HubSystems).ChildRules(HubSystemRules).When(c => c.HubSystems is not null);
        RuleFor(c => c.StrutStocks!).Must(s => s.DistinctBy(x => x.Code).Count() == s.Count).WithMessage("Two strut stocks have one code.").When(c => c.StrutStocks is not null);
        RuleForEach(c => c.StrutStocks).ChildRules(stock =>
        {
            Code(stock.RuleFor(s => s.Code));
            Sku(stock.RuleFor(s => s.Sku));
            Name(stock.RuleFor(s => s.Name));
            stock.RuleFor(s => s.StockLength).Must(l => l.Millimetres is >= 100 and <= 20_000).WithMessage("A stock length is 100 mm to 20 m.");
            stock.RuleFor(s => s.ModulusMPa).InclusiveBetween(1, 1_000_000).WithMessage("A modulus of '{PropertyValue}' MPa: 1 to 1,000,000, or left out where it is not known.");
            stock.RuleFor(s => s.LongTermModulusMPa).InclusiveBetween(1, 1_000_000).WithMessage("A modulus of '{PropertyValue}' MPa: 1 to 1,000,000, or left out for a material that does not creep.")
                .Must((s, longTerm) => longTerm is null || longTerm <= s.ModulusMPa).WithMessage("A long-term modulus is at most the modulus.");
            stock.RuleFor(s => s.StrengthMPa).InclusiveBetween(1, 10_000).WithMessage("A strength of '{PropertyValue}' MPa: 1 to 10,000, or left out where it is not known.");
            stock.RuleFor(s => s.OutsideDiameter).Must(d => d.Millimetres is > 0 and <= 500).WithMessage("A pipe is up to 500 mm wide.");
            stock.RuleFor(s => s.Wall).Must((s, w) => w.Millimetres > 0 && 2 * w.Tenths <= s.OutsideDiameter.Tenths).WithMessage("A wall is at most half of its pipe.");
            Grams(stock.RuleFor(s => s.GramsPerMetre));
        }).When(c => c.StrutStocks is not null);
        RuleForEach(c => c.Ties).ChildRules(tie =>
        {
            Sku(tie.RuleFor(t => t.Sku));
            Name(tie.RuleFor(t => t.Name));
            tie.RuleFor(t => t.RatedNewtons).InclusiveBetween(1, 1_000_000).WithMessage("A tie is rated for 1 to 1,000,000 N.");
            Grams(tie.RuleFor(t => t.MassGrams));
        }).When(c => c.Ties is not null);
        RuleForEach(c => c.Covers).ChildRules(cover =>
        {
            Code(cover.RuleFor(s => s.Code));
            Sku(cover.RuleFor(s => s.Sku));
            Name(cover.RuleFor(s => s.Name));
            cover.RuleFor(s => s.SeamAllowance).Must(l => l.Millimetres <= 500).WithMessage("A seam takes up to 500 mm.");
            Grams(cover.RuleFor(s => s.GramsPerM2));
        }).When(c => c.Covers is not null);
        RuleFor(c => c.Palette!.Colours).Must(c => c.Length is >= 1 and <= 24).WithMessage("A palette has 1 to 24 colours.")
            .Must(c => c.All(x => System.Text.RegularExpressions.Regex.IsMatch(x.Hex, @"^#[0-9A-Fa-f]{6}\z"))).WithMessage("A colour is written #RRGGBB.")
            .When(c => c.Palette is not null);
        RuleFor(c => c.Prices!).SetValidator(new PriceBookValidator()).When(c => c.Prices is not null);
        RuleFor(c => c.Parcels!).SetValidator(new ParcelRulesValidator()).When(c => c.Parcels is not null);
        RuleFor(c => c.Calendar!).SetValidator(new CalendarValidator()).When(c => c.Calendar is not null);
        RuleFor(c => c.Supplies!).Must(s => s.DistinctBy(x => x.Sku).Count() == s.Count).WithMessage("Two supplies are for one stock item.").When(c => c.Supplies is not null);
        RuleForEach(c => c.Supplies).ChildRules(SupplyRules).When(c => c.Supplies is not null);
        RuleFor(c => c.Workshop!).ChildRules(WorkshopRules).When(c => c.Workshop is not null);
    }

    static void HubSystemRules(InlineValidator<HubSystem> system)
    {
        Code(system.RuleFor(s => s.Code));
        Name(system.RuleFor(s => s.Name));
        system.RuleFor(s => s.Allowance).Must(a => a.Millimetres <= 500).WithMessage("A hub takes 0 to 500 mm off each end of a strut.");
        system.RuleFor(s => s.TiesPerEnd).InclusiveBetween(1, 8).WithMessage("'{PropertyValue}' ties to a strut end: 1 to 8.");
        Sku(system.RuleFor(s => s.Stake.Sku));
        Name(system.RuleFor(s => s.Stake.Name));
        system.RuleFor(s => s.Stake.PerBaseHub).InclusiveBetween(0, 12).WithMessage("'{PropertyValue}' stakes to a base hub: 0 to 12.");
        Grams(system.RuleFor(s => s.Stake.MassGrams));
        system.RuleFor(s => s.Hubs).Must(hubs => hubs.Length is >= 1 and <= 12).WithMessage("A hub system has 1 to 12 hubs.")
            .Must(hubs => hubs.DistinctBy(h => h.Ways).Count() == hubs.Length).WithMessage("Two hubs of a system have as many ways.");
        system.RuleForEach(s => s.Hubs).ChildRules(hub =>
        {
            Sku(hub.RuleFor(h => h.Sku));
            Name(hub.RuleFor(h => h.Name));
            hub.RuleFor(h => h.Ways).InclusiveBetween(2, 12).WithMessage("'{PropertyValue}' ways: 2 to 12.");
            Grams(hub.RuleFor(h => h.MassGrams));
        });
    }

    static void SupplyRules(InlineValidator<Supply> supply)
    {
        supply.RuleFor(s => s.Supplier).MaximumLength(200).WithMessage("A name is at most 200 characters.");
        supply.RuleFor(s => s.PackSize).InclusiveBetween(1, 100_000).WithMessage("'{PropertyValue}' to a pack: 1 to 100,000.");
        supply.RuleFor(s => s.LeadDays).InclusiveBetween(0, 365).WithMessage("'{PropertyValue}' working days: 0 to 365, or left out for the workshop's restockDays.");
        supply.RuleFor(s => s.ReorderAt).InclusiveBetween(0, 1_000_000).WithMessage("A reorder point of '{PropertyValue}': 0 to 1,000,000.");
        supply.RuleFor(s => s.OrderUpTo).InclusiveBetween(0, 1_000_000).WithMessage("'{PropertyValue}' to have after ordering: 0 to 1,000,000.");
    }

    static void WorkshopRules(InlineValidator<Workshop> workshop)
    {
        workshop.RuleFor(w => w.BundlePieces).InclusiveBetween(1, 500).WithMessage("'{PropertyValue}' pieces to a bundle: 1 to 500.");
        workshop.RuleFor(w => w.BundleGrams).InclusiveBetween(100, 100_000).WithMessage("'{PropertyValue}' g to a bundle: 100 to 100,000.");
        workshop.RuleFor(w => w.SpareTiesPercent).InclusiveBetween(0, 100).WithMessage("'{PropertyValue}' % spare ties: 0 to 100.");
        workshop.RuleFor(w => w.SawStep).Must(s => s.Millimetres is >= 0.1 and <= 10).WithMessage("A saw's step is 0.1 mm to 10 mm.");
        workshop.RuleFor(w => w.Kerf).Must(k => k.Millimetres <= 20).WithMessage("A kerf is 0 to 20 mm.");
        workshop.RuleFor(w => w.EndTrim).Must(t => t.Millimetres <= 1000).WithMessage("An end trim is 0 to 1 m.");
        workshop.RuleFor(w => w.LeadDays).InclusiveBetween(0, 365).WithMessage("'{PropertyValue}' working days: 0 to 365.");
        workshop.RuleFor(w => w.RestockDays).InclusiveBetween(0, 365).WithMessage("'{PropertyValue}' working days: 0 to 365.");
    }

    static void Code<T>(IRuleBuilderInitial<T, string> rule) => rule.Matches(@"^[a-z0-9-]{1,40}\z").WithMessage("A code is 1 to 40 small letters, digits and hyphens.");

    static void Sku<T>(IRuleBuilderInitial<T, string> rule) => rule.Matches(@"^[A-Za-z0-9._-]{1,60}\z").WithMessage("A stock code is 1 to 60 letters, digits, dots, hyphens and underscores.");

    static void Name<T>(IRuleBuilderInitial<T, string> rule) => rule.NotEmpty().WithMessage("Give it a name.").MaximumLength(200).WithMessage("A name is at most 200 characters.");

    static void Grams<T>(IRuleBuilderInitial<T, int> rule) => rule.InclusiveBetween(0, MostGrams).WithMessage("'{PropertyValue}' g: 0 to 1,000,000.");
}
