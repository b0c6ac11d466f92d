using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Text;

namespace KitWorks.Tests;

/// <summary>Somebody who calls the service over HTTP with one key, or with none.</summary>
sealed class Caller(HttpClient http, string? key)
{
    public Task<Answer> Get(string path, string? ifNoneMatch = null)
    {
        var request = new HttpRequestMessage(HttpMethod.Get, path);
        if (ifNoneMatch is not null) request.Headers.IfNoneMatch.Add(EntityTagHeaderValue.Parse(ifNoneMatch));
        return Send(request);
    }

    public Task<Answer> Post(string path, object? body = null, string? once = null) =>
        Send(With(once, new(HttpMethod.Post, path) { Content = body is null ? null : JsonContent.Create(body) }));

    public Task<Answer> Put(string path, object body) => Send(new(HttpMethod.Put, path) { Content = JsonContent.Create(body) });

    /// <summary>A body exactly as written, right or wrong.</summary>
    public Task<Answer> SendText(HttpMethod method, string path, string body, string? mediaType = "application/json", string? once = null)
    {
        var content = new ByteArrayContent(Encoding.UTF8.GetBytes(body));
        if (mediaType is not null) content.Headers.ContentType = MediaTypeHeaderValue.Parse(mediaType);
        return Send(With(once, new(method, path) { Content = content }));
    }

    public Task<Answer> PostText(string path, string body, string? once = null) => SendText(HttpMethod.Post, path, body, once: once);

    public async Task<Answer> Send(HttpRequestMessage request)
    {
        if (key is not null) request.Headers.Authorization = new("Bearer", key);
        using (request)
        {
            using var response = await http.SendAsync(request);
            return await Answer.Read(response);
        }
    }

    static HttpRequestMessage With(string? once, HttpRequestMessage request)
    {
        if (once is not null) request.Headers.Add("Idempotency-Key", once);
        return request;
    }
}
