using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

#pragma warning disable CA1814 // Prefer jagged arrays over multidimensional

namespace KitWorks.Migrations.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class BatchesParcelsPurchases : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "Batch",
                table: "orders",
                type: "INTEGER",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "BundleCount",
                table: "orders",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<int>(
                name: "Cuts",
                table: "orders",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<bool>(
                name: "IsCut",
                table: "orders",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.CreateTable(
                name: "batches",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Status = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Plan = table.Column<byte[]>(type: "BLOB", nullable: false),
                    MadeBy = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    MadeAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_batches", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "parcels",
                columns: table => new
                {
                    OrderId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Kits = table.Column<int>(type: "INTEGER", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    Sscc = table.Column<string>(type: "TEXT", maxLength: 18, nullable: true),
                    MassGrams = table.Column<int>(type: "INTEGER", nullable: false),
                    LengthTenths = table.Column<int>(type: "INTEGER", nullable: false),
                    SideTenths = table.Column<int>(type: "INTEGER", nullable: false),
                    Bundles = table.Column<string>(type: "TEXT", nullable: false),
                    LowerBound = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_parcels", x => new { x.OrderId, x.Number });
                });

            migrationBuilder.CreateTable(
                name: "purchases",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    Reference = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    Supplier = table.Column<string>(type: "TEXT", maxLength: 200, nullable: false),
                    ExpectedOn = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    IsClosed = table.Column<bool>(type: "INTEGER", nullable: false),
                    Version = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_purchases", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ready_struts",
                columns: table => new
                {
                    PipeSku = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    LengthTenths = table.Column<int>(type: "INTEGER", nullable: false),
                    OnHand = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ready_struts", x => new { x.PipeSku, x.LengthTenths });
                    table.CheckConstraint("not_below_nothing", "\"OnHand\" >= 0");
                });

            migrationBuilder.CreateTable(
                name: "remnants",
                columns: table => new
                {
                    Code = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    PipeSku = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    LengthTenths = table.Column<int>(type: "INTEGER", nullable: false),
                    Status = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Bin = table.Column<string>(type: "TEXT", maxLength: 40, nullable: false),
                    FromBatch = table.Column<int>(type: "INTEGER", nullable: true),
                    ForBatch = table.Column<int>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_remnants", x => x.Code);
                });

            migrationBuilder.CreateTable(
                name: "batch_orders",
                columns: table => new
                {
                    BatchId = table.Column<Guid>(type: "TEXT", nullable: false),
                    OrderId = table.Column<Guid>(type: "TEXT", nullable: false),
                    OrderNumber = table.Column<int>(type: "INTEGER", nullable: false),
                    PipeLines = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_batch_orders", x => new { x.BatchId, x.OrderId });
                    table.ForeignKey(
                        name: "FK_batch_orders_batches_BatchId",
                        column: x => x.BatchId,
                        principalTable: "batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "batch_patterns",
                columns: table => new
                {
                    BatchId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    Times = table.Column<int>(type: "INTEGER", nullable: false),
                    Cut = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_batch_patterns", x => new { x.BatchId, x.Number });
                    table.ForeignKey(
                        name: "FK_batch_patterns_batches_BatchId",
                        column: x => x.BatchId,
                        principalTable: "batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "purchase_lines",
                columns: table => new
                {
                    PurchaseId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Sku = table.Column<string>(type: "TEXT", maxLength: 60, nullable: false),
                    Ordered = table.Column<int>(type: "INTEGER", nullable: false),
                    Received = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_purchase_lines", x => new { x.PurchaseId, x.Sku });
                    table.ForeignKey(
                        name: "FK_purchase_lines_purchases_PurchaseId",
                        column: x => x.PurchaseId,
                        principalTable: "purchases",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.InsertData(
                table: "counters",
                columns: new[] { "Name", "Value" },
                values: new object[,]
                {
                    { "batch", 0 },
                    { "remnant", 0 },
                    { "sscc", 0 }
                });

            migrationBuilder.CreateIndex(
                name: "IX_batches_Number",
                table: "batches",
                column: "Number",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_parcels_Sscc",
                table: "parcels",
                column: "Sscc",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_purchases_IsClosed",
                table: "purchases",
                column: "IsClosed");

            migrationBuilder.CreateIndex(
                name: "IX_purchases_Reference",
                table: "purchases",
                column: "Reference",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_remnants_Status_PipeSku",
                table: "remnants",
                columns: new[] { "Status", "PipeSku" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "batch_orders");

            migrationBuilder.DropTable(
                name: "batch_patterns");

            migrationBuilder.DropTable(
                name: "parcels");

            migrationBuilder.DropTable(
                name: "purchase_lines");

            migrationBuilder.DropTable(
                name: "ready_struts");

            migrationBuilder.DropTable(
                name: "remnants");

            migrationBuilder.DropTable(
                name: "batches");

            migrationBuilder.DropTable(
                name: "purchases");

            migrationBuilder.DeleteData(
                table: "counters",
                keyColumn: "Name",
                keyValue: "batch");

            migrationBuilder.DeleteData(
                table: "counters",
                keyColumn: "Name",
                keyValue: "remnant");

            migrationBuilder.DeleteData(
                table: "counters",
                keyColumn: "Name",
                keyValue: "sscc");

            migrationBuilder.DropColumn(
                name: "Batch",
                table: "orders");

            migrationBuilder.DropColumn(
                name: "BundleCount",
                table: "orders");

            migrationBuilder.DropColumn(
                name: "Cuts",
                table: "orders");

            migrationBuilder.DropColumn(
                name: "IsCut",
                table: "orders");
        }
    }
}
