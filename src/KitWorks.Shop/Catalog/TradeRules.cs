using FluentValidation;
using KitWorks.Kits.Catalog;

namespace KitWorks.Shop.Catalog;

/// <summary>What a price book must be.</summary>
sealed class PriceBookValidator : AbstractValidator<PriceBook>
{
    const decimal MostMoney = 1_000_000;

    public PriceBookValidator()
    {
        RuleFor(p => p.Currency).Matches(@"^[A-Z]{3}\z").WithMessage("A currency is an ISO 4217 code, such as USD.");
        RuleFor(p => p.UnitCosts).Must(costs => costs.Values.All(c => c is >= 0 and <= MostMoney)).WithMessage("A cost is 0 to 1,000,000.");
        RuleFor(p => p.WastePercent).Must(waste => waste.Values.All(c => c is >= 0 and <= 100)).WithMessage("Waste is 0 to 100 per cent.");
        Cost(RuleFor(p => p.PerCut));
        Cost(RuleFor(p => p.PerTag));
        Cost(RuleFor(p => p.PerSawSetting));
        Cost(RuleFor(p => p.PerBundle));
        Cost(RuleFor(p => p.PerKit));
        Cost(RuleFor(p => p.PerParcel));
        RuleFor(p => p.OverheadPercent).InclusiveBetween(0, 1000).WithMessage("Overhead is 0 to 1000 per cent.");
        RuleFor(p => p.MarkupPercent).InclusiveBetween(0, 1000).WithMessage("A markup is 0 to 1000 per cent.");
        RuleFor(p => p.QuantityBreaks).Must(b => !b.IsDefault && b.Length <= 20).WithMessage("Give up to 20 quantity breaks.")
            .Must(b => b.IsDefault || b.DistinctBy(x => x.From).Count() == b.Length).WithMessage("Two quantity breaks begin at the same number of kits.");
        RuleForEach(p => p.QuantityBreaks).ChildRules(quantityBreak =>
        {
            quantityBreak.RuleFor(b => b.From).InclusiveBetween(2, 1000).WithMessage("A quantity break from '{PropertyValue}' kits: 2 to 1000.");
            quantityBreak.RuleFor(b => b.PercentOff).InclusiveBetween(0, 90).WithMessage("'{PropertyValue}' per cent off: 0 to 90.");
        }).When(p => !p.QuantityBreaks.IsDefault);
        RuleFor(p => p.Shipping).Must(s => !s.IsDefault && s.Length <= 200).WithMessage("Give up to 200 shipping rates.")
            .Must(s => s.IsDefault || s.DistinctBy(x => (x.Kind, x.UpToGrams)).Count() == s.Length).WithMessage("Two shipping rates are for the same parcel.");
        RuleForEach(p => p.Shipping).ChildRules(rate =>
        {
            rate.RuleFor(r => r.UpToGrams).InclusiveBetween(1, 1_000_000).WithMessage("A rate up to '{PropertyValue}' g: 1 to 1,000,000.");
            Cost(rate.RuleFor(r => r.Price));
        }).When(p => !p.Shipping.IsDefault);
        RuleFor(p => p.WhenCostMissing).IsInEnum().WithMessage("Say refuse or warn.");
    }

    static void Cost<T>(IRuleBuilderInitial<T, decimal> rule) => rule.InclusiveBetween(0, MostMoney).WithMessage("A cost is 0 to 1,000,000.");
}

/// <summary>What a table of parcels must be.</summary>
sealed class ParcelRulesValidator : AbstractValidator<ParcelRules>
{
    public ParcelRulesValidator()
    {
        RuleFor(p => p.Kinds).Must(k => !k.IsDefault && k.Length <= 12).WithMessage("Give up to 12 kinds of parcel.")
            .Must(k => k.IsDefault || k.DistinctBy(x => x.Code).Count() == k.Length).WithMessage("Two kinds of parcel have one code.");
        RuleForEach(p => p.Kinds).ChildRules(kind =>
        {
            kind.RuleFor(k => k.Code).Matches(@"^[a-z0-9-]{1,40}\z").WithMessage("A code is 1 to 40 small letters, digits and hyphens.");
            kind.RuleFor(k => k.Name).NotEmpty().WithMessage("Give it a name.").MaximumLength(100).WithMessage("A name is at most 100 characters.");
            kind.RuleFor(k => k.MaxLength).Must(l => l.Millimetres is >= 100 and <= 20_000).WithMessage("A parcel is 100 mm to 20 m long.");
            kind.RuleFor(k => k.MaxLengthAndGirth).Must((k, g) => g > k.MaxLength && g.Millimetres <= 100_000)
                .WithMessage("Length and girth together are more than the length, and up to 100 m. The girth is the way round the two shorter sides.");
            kind.RuleFor(k => k.MaxGrams).InclusiveBetween(100, 2_000_000).WithMessage("'{PropertyValue}' g to a parcel: 100 to 2,000,000.");
            kind.RuleFor(k => k.TareGrams).Must((k, tare) => tare >= 0 && tare < k.MaxGrams).WithMessage("The wrapping weighs less than the parcel may.");
        }).When(p => !p.Kinds.IsDefault);
        RuleFor(p => p.Wrapping).Must(w => w.Millimetres <= 200).WithMessage("Wrapping adds 0 to 200 mm.");
        RuleFor(p => p.BagGramsPerLitre).InclusiveBetween(10, 20_000).WithMessage("'{PropertyValue}' g to a litre: 10 to 20,000.");
        RuleFor(p => p.CoverGramsPerLitre).InclusiveBetween(10, 20_000).WithMessage("'{PropertyValue}' g to a litre: 10 to 20,000.");
        RuleFor(p => p.Gs1CompanyPrefix).Matches(@"^[0-9]{4,12}\z").WithMessage("A GS1 company prefix has 4 to 12 digits; leave it out where the shop has none.");
        RuleFor(p => p.SsccExtension).InclusiveBetween(0, 9).WithMessage("An extension digit is 0 to 9.");
    }
}

/// <summary>What a calendar must be.</summary>
sealed class CalendarValidator : AbstractValidator<WorkCalendar>
{
    public CalendarValidator()
    {
        RuleFor(c => c.WorkDays).Must(d => !d.IsDefaultOrEmpty && d.Distinct().Count() == d.Length).WithMessage("Name one day of the week or more on which the shop works, each once.");
        RuleFor(c => c.Closed).Must(c => !c.IsDefault && c.Length <= 500).WithMessage("Give up to 500 closed days or stretches of them.");
        RuleForEach(c => c.Closed).ChildRules(closed =>
        {
            closed.RuleFor(c => c.To).Must((c, to) => to >= c.From && to.DayNumber - c.From.DayNumber <= 366).WithMessage("Closed days end on their first day or later, within a year.");
            closed.RuleFor(c => c.Why).NotEmpty().WithMessage("Say why, or name the holiday.").MaximumLength(100).WithMessage("A reason is at most 100 characters.");
        }).When(c => !c.Closed.IsDefault);
        RuleFor(c => c.CutsPerDay).InclusiveBetween(1, 1_000_000).WithMessage("'{PropertyValue}' cuts a day: 1 to 1,000,000, or left out where the saw holds nothing up.");
        RuleFor(c => c.BundlesPerDay).InclusiveBetween(1, 1_000_000).WithMessage("'{PropertyValue}' bundles a day: 1 to 1,000,000, or left out where the bench holds nothing up.");
    }
}
