using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Webhooks;

/// <summary>
/// An address that is told what becomes of orders. The order events themselves are the outbox: they are written in the
/// transaction of what happened, and numbered in the order of commit, because one command writes at a time. A webhook is a
/// place in that line, <see cref="After"/>, and goes on only when its address has taken the event. <see cref="NextAt"/> is
/// when it is tried next; whoever puts it forward has the webhook until then.
/// </summary>
sealed class Webhook
{
    public const string SecretPrefix = "kwhs_";
    public const int LongestUrl = 500, LongestDetail = 300;

    public required Guid Id { get; init; }
    public required string Url { get; set; }

    /// <summary>Only this key's orders are told of; null for all.</summary>
    public required string? Storefront { get; set; }

    /// <summary>What signs. It has to be known to sign with, so that it is kept as it is and not as a hash.</summary>
    public required string Secret { get; set; }
    public required DateTimeOffset CreatedAt { get; init; }

    /// <summary>The number of the last order event that it is done with.</summary>
    public required long After { get; set; }

    /// <summary>Tries of the event that is next.</summary>
    public int Tries { get; private set; }
    public DateTimeOffset NextAt { get; private set; }
    public DateTimeOffset? DeliveredAt { get; private set; }
    public DateTimeOffset? FailingSince { get; private set; }

    /// <summary>What went wrong last; empty when nothing is.</summary>
    public string Detail { get; private set => field = value[..Math.Min(value.Length, LongestDetail)]; } = "";

    /// <summary>A new secret of 256 random bits.</summary>
    public static string NewSecret() => SecretPrefix + Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));

    public void Claim(DateTimeOffset lease) => NextAt = lease;

    public void Delivered(long number, DateTimeOffset now)
    {
        DeliveredAt = now;
        Pass(number, now);
    }

    /// <summary>Goes on behind an event.</summary>
    public void Pass(long number, DateTimeOffset now) => (After, Tries, FailingSince, Detail, NextAt) = (number, 0, null, "", now);

    public void Failed(string detail, DateTimeOffset now, DateTimeOffset next) =>
        (Detail, FailingSince, Tries, NextAt) = (detail, FailingSince ?? now, Tries + 1, next);

    public void TryNow(DateTimeOffset now) => NextAt = now;
}

sealed class WebhookTables : IEntityTypeConfiguration<Webhook>
{
    public void Configure(EntityTypeBuilder<Webhook> builder)
    {
        builder.ToTable("webhooks").HasKey(w => w.Id);
        builder.Property(w => w.Url).HasMaxLength(Webhook.LongestUrl);
        builder.Property(w => w.Storefront).HasMaxLength(100);
        builder.Property(w => w.Secret).HasMaxLength(100);
        builder.Property(w => w.Detail).HasMaxLength(Webhook.LongestDetail);
        // Two columns together hold the invariant: who may try, and which event is next.
        builder.Property(w => w.NextAt).IsConcurrencyToken();
        builder.Property(w => w.After).IsConcurrencyToken();
    }
}
