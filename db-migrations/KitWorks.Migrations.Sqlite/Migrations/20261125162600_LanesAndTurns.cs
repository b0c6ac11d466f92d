using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace KitWorks.Migrations.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class LanesAndTurns : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<int>(
                name: "Priority",
                table: "orders",
                type: "INTEGER",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<string>(
                name: "StockLines",
                table: "orders",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.AddColumn<string>(
                name: "Note",
                table: "order_events",
                type: "TEXT",
                maxLength: 300,
                nullable: true);

            migrationBuilder.CreateTable(
                name: "order_kits",
                columns: table => new
                {
                    OrderId = table.Column<Guid>(type: "TEXT", nullable: false),
                    Packed = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_order_kits", x => x.OrderId);
                    table.ForeignKey(
                        name: "FK_order_kits_orders_OrderId",
                        column: x => x.OrderId,
                        principalTable: "orders",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            // A shop that has taken orders has the counter already.
            migrationBuilder.Sql("INSERT OR IGNORE INTO counters (Name, Value) VALUES ('order', 1000)");

            // What an order takes from stock is filled in from its kit by Upgrade.
            migrationBuilder.Sql("INSERT INTO order_kits (OrderId, Packed) SELECT Id, PackedKit FROM orders");

            // SQLite itself drops a column in the transaction of the migration; the builder would copy the table, outside of it.
            migrationBuilder.Sql("ALTER TABLE orders DROP COLUMN PackedKit");

            migrationBuilder.CreateIndex(
                name: "IX_stock_movements_Reference",
                table: "stock_movements",
                column: "Reference");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "order_kits");

            migrationBuilder.DropIndex(
                name: "IX_stock_movements_Reference",
                table: "stock_movements");

            migrationBuilder.DeleteData(
                table: "counters",
                keyColumn: "Name",
                keyValue: "order");

            migrationBuilder.DropColumn(
                name: "Priority",
                table: "orders");

            migrationBuilder.DropColumn(
                name: "StockLines",
                table: "orders");

            migrationBuilder.DropColumn(
                name: "Note",
                table: "order_events");

            migrationBuilder.AddColumn<byte[]>(
                name: "PackedKit",
                table: "orders",
                type: "BLOB",
                nullable: false,
                defaultValue: new byte[0]);
        }
    }
}
