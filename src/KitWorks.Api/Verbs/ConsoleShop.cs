using KitWorks.Api.Hosting;
using KitWorks.Geometry;
using KitWorks.Shop;
using MediatR;

namespace KitWorks.Api.Verbs;

/// <summary>The shop as the verbs ask it, from the console of its machine.</summary>
static class ConsoleShop
{
    public static async Task<int> Ask(Func<IMediator, TimeProvider, Task<int>> action, CancellationToken cancellationToken)
    {
        await using var app = ShopHost.Build(("Logging:LogLevel:Default", "Warning"));
        await app.Prepare(cancellationToken);
        await using var scope = app.Services.CreateAsyncScope();
        var call = scope.ServiceProvider.GetRequiredService<Call>();
        (call.Actor, call.Role) = ("console", Role.Admin);
        return await action(scope.ServiceProvider.GetRequiredService<IMediator>(), scope.ServiceProvider.GetRequiredService<TimeProvider>());
    }

    public static int Say<T>(Outcome<T> outcome, Func<T, string> words)
    {
        if (outcome.Succeeds(out var value, out var refusal))
        {
            Console.WriteLine(words(value));
            return 0;
        }
        Console.Error.WriteLine($"kitworks: {refusal.Detail}");
        return 1;
    }
}
