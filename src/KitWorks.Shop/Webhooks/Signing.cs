using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace KitWorks.Shop.Webhooks;

/// <summary>
/// Signs what is sent as RFC 9421 (HTTP message signatures) lays down, with hmac-sha256: over headers of the request, among
/// them the digest of its body (RFC 9530), and over the moment of signing.
/// </summary>
static class Signing
{
    /// <summary>The value of <c>Content-Digest</c> for a body.</summary>
    public static string Digest(ReadOnlySpan<byte> body) => $"sha-256=:{Convert.ToBase64String(SHA256.HashData(body))}:";

    /// <summary>The values of <c>Signature-Input</c> and <c>Signature</c> for these components, in this order.</summary>
    public static (string Input, string Signature) Sign(
        string label, IReadOnlyList<(string Name, string Value)> components, DateTimeOffset created, string keyId, ReadOnlySpan<byte> key)
    {
        var parameters = string.Create(CultureInfo.InvariantCulture,
            $"({string.Join(' ', components.Select(c => $"\"{c.Name}\""))});created={created.ToUnixTimeSeconds()};keyid=\"{keyId}\"");
        var lines = components.Select(c => $"\"{c.Name}\": {c.Value}").Append($"\"@signature-params\": {parameters}");
        var signature = HMACSHA256.HashData(key, Encoding.UTF8.GetBytes(string.Join('\n', lines)));
        return ($"{label}={parameters}", $"{label}=:{Convert.ToBase64String(signature)}:");
    }
}
