using System.Globalization;
using KitWorks.Kits.Catalog;
using KitWorks.Shop.Orders;

namespace KitWorks.Api.Pages.Parts;

/// <summary>How the pages write numbers and times.</summary>
static class Say
{
    static CultureInfo Plain => CultureInfo.InvariantCulture;

    /// <summary>The size of a whole thing: <c>3.05 m</c>.</summary>
    public static string Metres(double millimetres) => (millimetres / 1000).ToString("0.00", Plain) + " m";

    /// <summary>The size of a part: <c>1008.9 mm</c>.</summary>
    public static string Millimetres(double millimetres) => millimetres.ToString("0.#", Plain) + " mm";

    public static string Mass(int grams) => (grams / 1000m).ToString("0.0#", Plain) + " kg";

    public static string Area(double squareMetres) => squareMetres.ToString("0.0", Plain) + " m²";

    public static string Number(int number) => number.ToString("N0", Plain);

    /// <summary>A change, with its sign: <c>+12</c>, <c>−3</c>.</summary>
    public static string Change(int number) => number > 0 ? "+" + Number(number) : number < 0 ? "−" + Number(-number) : "0";

    public static string Money(Money money) => money.Amount.ToString("N2", Plain) + " " + money.Currency;

    public static string Count(int number, string one, string? many = null) => $"{Number(number)} {(number == 1 ? one : many ?? one + "s")}";

    public static string Day(DateOnly day) => day.ToString("ddd d MMM", Plain);

    public static string When(DateTimeOffset at, TimeProvider clock) => TimeZoneInfo.ConvertTime(at, clock.LocalTimeZone).ToString("d MMM yyyy, HH:mm", Plain);

    public static DateOnly Today(TimeProvider clock) => DateOnly.FromDateTime(clock.GetLocalNow().DateTime);

    /// <summary>When something should leave, against today: a late one says so.</summary>
    public static string ShipBy(DateOnly? day, TimeProvider clock) => day is not { } d ? "when its stock is in"
        : d == Today(clock) ? "today"
        : d < Today(clock) ? $"{Day(d)}, late"
        : Day(d);

    public static string Status(OrderStatus status) => status switch
    {
        OrderStatus.Waiting => "waiting for stock",
        OrderStatus.Reserved => "ready to pick",
        OrderStatus.Picking => "being packed",
        OrderStatus.Packed => "packed",
        OrderStatus.Shipped => "shipped",
        OrderStatus.Cancelled => "cancelled",
    };
}
