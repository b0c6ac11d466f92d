using KitWorks.Shop;
using MediatR;

namespace KitWorks.Api.Pages.Settings;

/// <summary>Where everything that the shop sets is found.</summary>
sealed class SettingsModel(IMediator mediator, ShopSettings settings) : BenchPage(mediator)
{
    public int Printers => settings.Printers.Length;
}
