using KitWorks.Kits.Packing;
using KitWorks.Shop.Inventory;
using KitWorks.Shop.Printing;

namespace KitWorks.Api.Pages.Parts;

/// <summary>What the shop's things are called on the pages.</summary>
static class Words
{
    public static string Of(Printable what) => what switch
    {
        Printable.Labels => "Bundle labels",
        Printable.Picklist => "Picklist",
        Printable.CutPlan => "Cut sheet",
        Printable.PackingList => "Packing list",
        Printable.Guide => "Build guide",
    };

    public static string Of(BundleKind kind) => kind switch
    {
        BundleKind.Struts => "Struts",
        BundleKind.Hubs => "Hubs",
        BundleKind.Ties => "Ties",
        BundleKind.Stakes => "Stakes",
        BundleKind.Cover => "Cover",
    };

    public static string Of(MovementKind kind) => kind switch
    {
        MovementKind.Receipt => "received",
        MovementKind.Count => "counted",
        MovementKind.Adjustment => "put right",
        MovementKind.Reserve => "promised",
        MovementKind.Release => "promise taken back",
        MovementKind.Consume => "left the house",
        MovementKind.Replacement => "sent as a replacement",
        MovementKind.Return => "came back",
    };
}
