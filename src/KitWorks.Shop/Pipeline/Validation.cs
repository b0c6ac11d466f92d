using FluentValidation;
using KitWorks.Geometry;
using MediatR;

namespace KitWorks.Shop.Pipeline;

/// <summary>Refuses a request whose validator finds fault, before any handler sees it.</summary>
sealed class Validation<TRequest, TResponse>(IEnumerable<IValidator<TRequest>> validators) : IPipelineBehavior<TRequest, TResponse>
    where TRequest : notnull
    where TResponse : IOutcome<TResponse>
{
    public Task<TResponse> Handle(TRequest request, CancellationToken cancellationToken, RequestHandlerDelegate<TResponse> next)
    {
        var faults = validators.SelectMany(v => v.Validate(request).Errors).ToList();
        return faults.Count == 0
            ? next()
            : Task.FromResult(TResponse.Refused(new(RefusalKind.Impossible, "request.invalid", faults[0].ErrorMessage)
            {
                Errors = [.. faults.Select(f => new FieldError(FieldOf(f.PropertyName), f.ErrorMessage))],
            }));
    }

    /// <summary><c>Lines[0].Quantity</c> as the client wrote it: <c>lines/0/quantity</c>.</summary>
    static string FieldOf(string property) => string.Join('/', property.Replace("]", "", StringComparison.Ordinal)
        .Split('.', '[').Select(part => part.Length == 0 ? part : char.ToLowerInvariant(part[0]) + part[1..]));
}
