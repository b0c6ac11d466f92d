using KitWorks.Shop.Storage;
using NetArchTest.Rules;

namespace KitWorks.Shop.Tests;

/// <summary>Which folder of the shop may know which. Each folder is a module; its tables are its own.</summary>
public sealed class ArchitectureTests
{
    static readonly System.Reflection.Assembly Shop = typeof(ShopServices).Assembly;

    [Theory]
    [InlineData("Inventory", "Catalog", "Planning", "Quotes", "Orders", "Packing", "Sawing", "Shipping", "Printing", "Access", "Webhooks")]
    [InlineData("Access", "Catalog", "Inventory", "Planning", "Quotes", "Orders", "Packing", "Sawing", "Shipping", "Printing", "Webhooks")]
    [InlineData("Catalog", "Planning", "Quotes", "Orders", "Packing", "Sawing", "Shipping", "Printing", "Access", "Webhooks")]
    [InlineData("Planning", "Quotes", "Orders", "Packing", "Sawing", "Shipping", "Printing", "Access", "Webhooks")]
    [InlineData("Quotes", "Orders", "Packing", "Sawing", "Shipping", "Printing", "Access", "Webhooks")]
    [InlineData("Packing", "Catalog", "Inventory", "Planning", "Quotes", "Orders", "Sawing", "Shipping", "Printing", "Access", "Webhooks")]
    [InlineData("Orders", "Sawing", "Shipping", "Printing", "Access", "Webhooks")]
    [InlineData("Sawing", "Planning", "Quotes", "Shipping", "Printing", "Access", "Webhooks")]
    [InlineData("Shipping", "Inventory", "Planning", "Quotes", "Sawing", "Printing", "Access", "Webhooks")]
    [InlineData("Printing", "Planning", "Quotes", "Access", "Webhooks")]
    [InlineData("Webhooks", "Catalog", "Inventory", "Planning", "Quotes", "Packing", "Sawing", "Shipping", "Printing")]
    public void Folder_WhenLookedInto_KnowsOnlyThoseBelowIt(string folder, params string[] unknown)
    {
        var types = Types.InAssembly(Shop).That().ResideInNamespaceStartingWith($"KitWorks.Shop.{folder}");
        Assert.NotEmpty(types.GetTypes());

        var result = types.ShouldNot().HaveDependencyOnAny([.. unknown.Select(f => $"KitWorks.Shop.{f}")]).GetResult();

        Assert.True(result.IsSuccessful, $"{folder} knows too much: {string.Join(", ", result.FailingTypeNames ?? [])}");
    }

    [Theory]
    [InlineData("Inventory", "StockItem", "StockBalance", "Movement", "Ledger")]
    [InlineData("Orders", "Order", "OrderEvent")]
    [InlineData("Packing", "PackedBundle")]
    [InlineData("Quotes", "Quote")]
    [InlineData("Catalog", "CatalogSection")]
    [InlineData("Access", "ApiKey", "StaffMember")]
    [InlineData("Planning", "Purchase", "PurchaseLine")]
    [InlineData("Sawing", "Batch", "BatchedOrder", "PatternProgress", "ShelvedRemnant", "ReadyStruts")]
    [InlineData("Shipping", "ShippedParcel")]
    [InlineData("Webhooks", "Webhook")]
    public void Tables_WhenLookedFor_AreTouchedByTheirOwnFolderOnly(string folder, params string[] entities)
    {
        var names = entities.Select(e => $"KitWorks.Shop.{folder}.{e}").ToArray();
        Assert.All(names, name => Assert.NotNull(Shop.GetType(name)));
        // ShopDb lists every table.
        var others = Shop.GetTypes().Where(t => t != typeof(ShopDb) && t.Namespace?.StartsWith($"KitWorks.Shop.{folder}", StringComparison.Ordinal) == false).ToList();
        Assert.NotEmpty(others);

        Assert.Empty(others.Where(t => Touches(t, names)).Select(t => t.FullName));
    }

    /// <summary>Exact names: a rule by prefix would take OrderAnswer for Order.</summary>
    static bool Touches(Type type, string[] names) => type
        .GetMembers(System.Reflection.BindingFlags.DeclaredOnly | System.Reflection.BindingFlags.Instance | System.Reflection.BindingFlags.Static
            | System.Reflection.BindingFlags.Public | System.Reflection.BindingFlags.NonPublic)
        .SelectMany(Mentioned).SelectMany(WithParts).Any(t => names.Contains(t.FullName));

    static IEnumerable<Type> Mentioned(System.Reflection.MemberInfo member) => member switch
    {
        System.Reflection.FieldInfo field => [field.FieldType],
        System.Reflection.PropertyInfo property => [property.PropertyType],
        System.Reflection.MethodBase method => method.GetParameters().Select(p => p.ParameterType)
            .Concat(method.GetMethodBody()?.LocalVariables.Select(v => v.LocalType) ?? [])
            .Append(method is System.Reflection.MethodInfo { ReturnType: var returned } ? returned : typeof(void)),
        Type nested => [nested],
        _ => [],
    };

    static IEnumerable<Type> WithParts(Type type) => type.IsGenericType ? type.GenericTypeArguments.SelectMany(WithParts).Append(type)
        : type.HasElementType ? WithParts(type.GetElementType()!) : [type];

    [Fact]
    public void Shop_WhenLookedInto_ReadsNoConfigurationAndKnowsNoWeb()
    {
        var types = Types.InAssembly(Shop);
        Assert.NotEmpty(types.GetTypes());

        var result = types.ShouldNot().HaveDependencyOnAny(
            "Microsoft.Extensions.Configuration", "Microsoft.AspNetCore.Http", "Microsoft.AspNetCore.Mvc", "Microsoft.AspNetCore.Authentication", "Microsoft.AspNetCore.Builder", "KitWorks.Api").GetResult();

        Assert.True(result.IsSuccessful, string.Join(", ", result.FailingTypeNames ?? []));
    }
}
