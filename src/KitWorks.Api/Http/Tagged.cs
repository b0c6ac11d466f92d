using System.Text.Json;
using Microsoft.AspNetCore.Http.Json;
using Microsoft.Extensions.Options;

namespace KitWorks.Api.Http;

/// <summary>A JSON answer to a GET carries a tag of its content, and whoever has that content is told so.</summary>
sealed class Tagged(IOptions<JsonOptions> json) : IEndpointFilter
{
    public async ValueTask<object?> InvokeAsync(EndpointFilterInvocationContext context, EndpointFilterDelegate next)
    {
        var answer = await next(context);
        return HttpMethods.IsGet(context.HttpContext.Request.Method)
            && answer is IValueHttpResult { Value: { } value } and IStatusCodeHttpResult { StatusCode: StatusCodes.Status200OK } and not IFileHttpResult
            ? new KeptAnswer(StatusCodes.Status200OK, "application/json; charset=utf-8", JsonSerializer.SerializeToUtf8Bytes(value, value.GetType(), json.Value.SerializerOptions))
            : answer;
    }
}
