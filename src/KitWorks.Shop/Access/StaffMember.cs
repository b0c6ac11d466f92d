using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Access;

/// <summary>
/// One of the shop's people, who signs in at the bench. Passwords, stamps and lock-outs are Identity's; the role is ours. Who
/// has left stays in the table, because the histories name them, and cannot sign in.
/// </summary>
sealed class StaffMember : IdentityUser<Guid>
{
    public required Role Role { get; init; }
    public required DateTimeOffset CreatedAt { get; init; }
    public DateTimeOffset? EndedAt { get; set; }
}

sealed class StaffTables : IEntityTypeConfiguration<StaffMember>, IEntityTypeConfiguration<DataProtectionKey>
{
    public void Configure(EntityTypeBuilder<StaffMember> builder)
    {
        builder.ToTable("staff").HasKey(s => s.Id);
        builder.Property(s => s.UserName).HasMaxLength(60);
        builder.Property(s => s.NormalizedUserName).HasMaxLength(60);
        builder.HasIndex(s => s.NormalizedUserName).IsUnique();
        builder.Property(s => s.PasswordHash).HasMaxLength(200);
        builder.Property(s => s.SecurityStamp).HasMaxLength(40);
        builder.Property(s => s.ConcurrencyStamp).HasMaxLength(40).IsConcurrencyToken();
        // Nobody is written or telephoned to.
        builder.Ignore(s => s.Email).Ignore(s => s.NormalizedEmail).Ignore(s => s.EmailConfirmed);
        builder.Ignore(s => s.PhoneNumber).Ignore(s => s.PhoneNumberConfirmed).Ignore(s => s.TwoFactorEnabled);
    }

    /// <summary>What sign-in cookies are sealed with: kept here, so that every instance opens what another sealed.</summary>
    public void Configure(EntityTypeBuilder<DataProtectionKey> builder) => builder.ToTable("sealing_keys");
}
