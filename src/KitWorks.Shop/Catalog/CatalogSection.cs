using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace KitWorks.Shop.Catalog;

/// <summary>One section of the catalog, as the shop last saved it.</summary>
sealed class CatalogSection
{
    public required string Name { get; init; }
    public required string Json { get; set; }

    /// <summary>Goes up by one with each change; two people who change a section at once do not overwrite each other.</summary>
    public required int Version { get; set; }
}

sealed class CatalogTables : IEntityTypeConfiguration<CatalogSection>
{
    public void Configure(EntityTypeBuilder<CatalogSection> builder)
    {
        builder.ToTable("catalog_sections").HasKey(s => s.Name);
        builder.Property(s => s.Name).HasMaxLength(40);
        builder.Property(s => s.Version).IsConcurrencyToken();
    }
}
