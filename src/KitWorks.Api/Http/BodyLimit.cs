using Microsoft.AspNetCore.Http.Features;

namespace KitWorks.Api.Http;

/// <summary>
/// Refuses a body that is too large: at once where its length is announced, else as soon as too much has come. The server
/// takes in the rest up to <see cref="StillTaken"/> all the same: cut off at once, most clients report a broken connection
/// and never see the answer.
/// </summary>
sealed class BodyLimit(RequestDelegate next)
{
    public const int Most = 1024 * 1024;

    /// <summary>What the server reads of a request at all.</summary>
    public const int StillTaken = 16 * Most;

    public static string Detail => $"A request body is at most {Most / 1024} KiB.";

    public Task InvokeAsync(HttpContext context)
    {
        if (context.Request.ContentLength > Most)
            return Problems.Of(StatusCodes.Status413PayloadTooLarge, "request.too-large", Detail).ExecuteAsync(context);
        if (context.Request.ContentLength is null && context.Features.Get<IHttpRequestBodyDetectionFeature>() is { CanHaveBody: true })
            context.Request.Body = new Counted(context.Request.Body);
        return next(context);
    }

    /// <summary>A body of a length that nobody announced.</summary>
    sealed class Counted(Stream body) : Stream
    {
        long read;

        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            Count(await body.ReadAsync(buffer, cancellationToken));

        public override async Task<int> ReadAsync(byte[] buffer, int offset, int count, CancellationToken cancellationToken) =>
            await ReadAsync(buffer.AsMemory(offset, count), cancellationToken);

        public override int Read(byte[] buffer, int offset, int count) => Count(body.Read(buffer, offset, count));

        int Count(int more) => (read += more) <= Most ? more : throw new BadHttpRequestException(Detail, StatusCodes.Status413PayloadTooLarge);

        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => read; set => throw new NotSupportedException(); }
        public override void Flush() { }
        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
        public override void SetLength(long value) => throw new NotSupportedException();
        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
