using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace KitWorks.Migrations.PostgreSql.Migrations
{
    /// <inheritdoc />
    public partial class Webhooks : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "webhooks",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "uuid", nullable: false),
                    Url = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    Storefront = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: true),
                    Secret = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    CreatedAt = table.Column<long>(type: "bigint", nullable: false),
                    After = table.Column<long>(type: "bigint", nullable: false),
                    Tries = table.Column<int>(type: "integer", nullable: false),
                    NextAt = table.Column<long>(type: "bigint", nullable: false),
                    DeliveredAt = table.Column<long>(type: "bigint", nullable: true),
                    FailingSince = table.Column<long>(type: "bigint", nullable: true),
                    Detail = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_webhooks", x => x.Id);
                });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "webhooks");
        }
    }
}
