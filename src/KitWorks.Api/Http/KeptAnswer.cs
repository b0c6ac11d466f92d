using System.Buffers;
using System.Buffers.Binary;
using System.ComponentModel;
using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.Caching.Hybrid;
using Microsoft.Net.Http.Headers;

namespace KitWorks.Api.Http;

/// <summary>An answer as bytes, with the tag that tells it from others. Whoever has these bytes already is told so.</summary>
[ImmutableObject(true)]
sealed class KeptAnswer(int status, string contentType, byte[] content, string tag) : IResult
{
    public KeptAnswer(int status, string contentType, byte[] content)
        : this(status, contentType, content, $"\"{Convert.ToHexStringLower(SHA256.HashData(content).AsSpan(0, 16))}\"") { }

    public int Size => content.Length;

    public async Task ExecuteAsync(HttpContext httpContext)
    {
        var (request, response) = (httpContext.Request, httpContext.Response);
        if (status == StatusCodes.Status200OK)
        {
            response.Headers.ETag = tag;
            // RFC 9110, section 13.1.2: only a GET or HEAD is answered with 304.
            if (HttpMethods.IsGet(request.Method) && Has(request.Headers.IfNoneMatch))
            {
                response.StatusCode = StatusCodes.Status304NotModified;
                return;
            }
        }
        (response.StatusCode, response.ContentType, response.ContentLength) = (status, contentType, content.Length);
        await response.BodyWriter.WriteAsync(content, httpContext.RequestAborted);
    }

    bool Has(Microsoft.Extensions.Primitives.StringValues tags) => tags.Count > 0 && EntityTagHeaderValue.TryParseList(tags, out var all)
        && all.Any(t => t.Equals(EntityTagHeaderValue.Any) || t.Tag.Equals(tag, StringComparison.Ordinal));

    /// <summary>How an answer is kept where several processes share what they computed: status, lengths of the two texts, texts, content.</summary>
    public sealed class Serializer : IHybridCacheSerializer<KeptAnswer>
    {
        public void Serialize(KeptAnswer value, IBufferWriter<byte> target)
        {
            var type = Encoding.ASCII.GetBytes(value.Type);
            var tag = Encoding.ASCII.GetBytes(value.Tag);
            var head = target.GetSpan(4);
            BinaryPrimitives.WriteUInt16LittleEndian(head, (ushort)value.Status);
            (head[2], head[3]) = ((byte)type.Length, (byte)tag.Length);
            target.Advance(4);
            target.Write(type);
            target.Write(tag);
            target.Write(value.Content);
        }

        public KeptAnswer Deserialize(ReadOnlySequence<byte> source)
        {
            var bytes = source.ToArray();
            int type = bytes[2], tag = bytes[3];
            return new(BinaryPrimitives.ReadUInt16LittleEndian(bytes), Encoding.ASCII.GetString(bytes, 4, type), bytes[(4 + type + tag)..], Encoding.ASCII.GetString(bytes, 4 + type, tag));
        }
    }

    int Status => status;
    string Type => contentType;
    string Tag => tag;
    byte[] Content => content;
}
