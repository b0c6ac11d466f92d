using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Access;

/// <summary>A key to the HTTP interface. Only the hash of its secret is kept.</summary>
sealed class ApiKey
{
    public const string Prefix = "kitworks_";

    public required Guid Id { get; init; }
    public required string Name { get; init; }
    public required Role Role { get; init; }
    public required byte[] Hash { get; init; }
    public required DateTimeOffset CreatedAt { get; init; }
    public DateTimeOffset? ExpiresAt { get; init; }
    public DateTimeOffset? RevokedAt { get; set; }

    /// <summary>To the half minute.</summary>
    public DateTimeOffset? LastUsedAt { get; private set; }

    /// <summary>A new secret of 256 random bits.</summary>
    public static string NewSecret() => Prefix + Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));

    /// <summary>SHA-256 is enough for a secret of full entropy; there is nothing to guess.</summary>
    public static byte[] HashOf(string secret) => SHA256.HashData(Encoding.UTF8.GetBytes(secret));
}

sealed class AccessTables : IEntityTypeConfiguration<ApiKey>
{
    public void Configure(EntityTypeBuilder<ApiKey> builder)
    {
        builder.ToTable("api_keys").HasKey(k => k.Id);
        builder.Property(k => k.Name).HasMaxLength(100);
        builder.HasIndex(k => k.Hash).IsUnique();
        builder.HasIndex(k => k.Name).IsUnique();
    }
}
