using System.Collections.Immutable;
using System.Reflection;
using FluentValidation;
using KitWorks.Geometry;
using KitWorks.Shop.Pipeline;
using KitWorks.Shop.Storage;
using MediatR;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;

namespace KitWorks.Shop;

/// <summary>Puts the shop together.</summary>
public static class ShopServices
{
    /// <summary>Adds every command and query of the shop, on the database that <paramref name="database"/> chooses.</summary>
    public static IServiceCollection AddShop(this IServiceCollection services, ShopSettings settings, Action<DbContextOptionsBuilder> database)
    {
        services.AddSingleton(settings);
        services.TryAddSingleton(TimeProvider.System);
        // What never changes is worked out once, and not again for each request.
        services.AddDbContext<ShopDb>(database, ServiceLifetime.Scoped, ServiceLifetime.Singleton);
        services.AddScoped<Call>();
        AddStaff(services);
        services.AddSingleton<KeysInFlight>();
        services.AddSingleton<Access.KnownKeys>();
        services.AddSingleton<Access.KeyUses>();
        services.AddScoped<Auditing.AuditTrail>();
        services.AddSingleton<Catalog.CatalogShelf>();
        services.AddSingleton<WriteLane>();
        services.AddScoped<Answering>();
        services.AddScoped<Inventory.Ledger>();
        services.AddSingleton<Orders.OrderDesk>();
        services.AddScoped<Orders.OrderTaking>();
        services.AddSingleton<Printing.OrderLabelPress>();
        services.AddSingleton<Printing.Ipp.IppConnections>();
        services.AddSingleton<Printing.PrinterRoom>();
        services.AddScoped<Printing.PrintedDocument>();
        services.AddScoped<Printing.PrintStep>();
        services.AddSingleton<Printing.PrintWork>();
        services.AddSingleton<Webhooks.WebhookPost>();
        services.AddScoped<Webhooks.WebhookStep>();
        services.AddSingleton<Webhooks.WebhookWork>();
        return services.AddMediator(typeof(ShopServices).Assembly);
    }

    /// <summary>Identity's passwords and lock-outs, on our table; which names and passwords will do, the commands say.</summary>
    static void AddStaff(IServiceCollection services)
    {
        services.AddIdentityCore<Access.StaffMember>(identity =>
        {
            identity.User.AllowedUserNameCharacters = "";
            identity.Password = new() { RequireDigit = false, RequireLowercase = false, RequireUppercase = false, RequireNonAlphanumeric = false, RequiredLength = 1, RequiredUniqueChars = 1 };
            identity.Lockout.MaxFailedAccessAttempts = 5;
            identity.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(5);
        });
        services.AddScoped<IUserStore<Access.StaffMember>, UserOnlyStore<Access.StaffMember, ShopDb, Guid>>();
    }

    /// <summary>
    /// MediatR by hand: handlers and validators by scan; around every command, from the outside in, counting, once-only, validation, one transaction
    /// (a prepared command sends another for that); around every query, validation.
    /// </summary>
    static IServiceCollection AddMediator(this IServiceCollection services, Assembly assembly)
    {
        services.AddScoped<ServiceFactory>(provider => provider.GetRequiredService);
        services.AddScoped<IMediator, Mediator>();
        foreach (var type in assembly.DefinedTypes.Where(t => t is { IsAbstract: false, IsGenericTypeDefinition: false }))
        {
            foreach (var handled in type.ImplementedInterfaces.Where(IsHandler)) services.AddScoped(handled, type);
            foreach (var message in type.ImplementedInterfaces.Where(i => i.IsGenericType))
            {
                var kind = message.GetGenericTypeDefinition();
                if (!Messages.Contains(kind)) continue;
                var answer = typeof(Outcome<>).MakeGenericType(message.GenericTypeArguments[0]);
                var step = typeof(IPipelineBehavior<,>).MakeGenericType(type, answer);
                if (kind != typeof(IQuery<>)) services.AddScoped(step, typeof(Counting.Counted<,>).MakeGenericType(type, message.GenericTypeArguments[0]));
                if (kind != typeof(IQuery<>)) services.AddScoped(step, typeof(Once<,>).MakeGenericType(type, message.GenericTypeArguments[0]));
                services.AddScoped(step, typeof(Validation<,>).MakeGenericType(type, answer));
                if (kind == typeof(ICommand<>)) services.AddScoped(step, typeof(OneTransaction<,>).MakeGenericType(type, message.GenericTypeArguments[0]));
            }
        }
        return services;
    }

    static readonly Type[] Messages = [typeof(ICommand<>), typeof(IPreparedCommand<>), typeof(IQuery<>)];
    static readonly Type[] Handlers = [typeof(IRequestHandler<,>), typeof(INotificationHandler<>), typeof(IValidator<>), typeof(Counting.IAfterwards<,>)];

    static bool IsHandler(Type type) => type.IsGenericType && Handlers.Contains(type.GetGenericTypeDefinition());
}

/// <summary>What the shop is told by whoever runs it.</summary>
public sealed record ShopSettings
{
    /// <summary>The shop's name, on labels and papers.</summary>
    public required string ShopName { get; init; }

    /// <summary>Where customers and staff reach the service, for codes on labels: <c>http://localhost:5080</c>.</summary>
    public required Uri PublicUrl { get; init; }

    /// <summary>The shop's own label templates, which stand in for the shipped ones of the same name; null for none.</summary>
    public string? LabelTemplates { get; init; }

    /// <summary>A folder of the shop's own fonts, for characters that the shipped ones lack; null for none.</summary>
    public string? LabelFonts { get; init; }

    /// <summary>The shop's own sheets and rolls of labels; one of the name of a built-in one stands in for it.</summary>
    public ImmutableArray<Labels.LabelStock> LabelStocks { get; init; } = [];

    /// <summary>The shop's printers, each of another name.</summary>
    public ImmutableArray<Printing.PrinterSetting> Printers { get; init; } = [];

    /// <summary>How patient the shop is with its printers.</summary>
    public Printing.PrintingPace PrintingPace { get; init; } = new();

    /// <summary>How webhooks are told.</summary>
    public Webhooks.WebhookPace WebhookPace { get; init; } = new();
}
