using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace KitWorks.Migrations.Sqlite.Migrations
{
    /// <inheritdoc />
    public partial class PrintJobs : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "print_jobs",
                columns: table => new
                {
                    Id = table.Column<Guid>(type: "TEXT", nullable: false),
                    OrderId = table.Column<Guid>(type: "TEXT", nullable: false),
                    OrderNumber = table.Column<int>(type: "INTEGER", nullable: false),
                    What = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Tier = table.Column<int>(type: "INTEGER", nullable: true),
                    Printer = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    CreatedBy = table.Column<string>(type: "TEXT", maxLength: 100, nullable: false),
                    CreatedAt = table.Column<long>(type: "INTEGER", nullable: false),
                    Status = table.Column<string>(type: "TEXT", maxLength: 20, nullable: false),
                    Detail = table.Column<string>(type: "TEXT", maxLength: 400, nullable: false),
                    Reasons = table.Column<string>(type: "TEXT", maxLength: 600, nullable: false),
                    PrinterJobId = table.Column<int>(type: "INTEGER", nullable: true),
                    Round = table.Column<int>(type: "INTEGER", nullable: false),
                    Tries = table.Column<int>(type: "INTEGER", nullable: false),
                    CancelAsked = table.Column<bool>(type: "INTEGER", nullable: false),
                    SentAt = table.Column<long>(type: "INTEGER", nullable: true),
                    FinishedAt = table.Column<long>(type: "INTEGER", nullable: true),
                    NextAt = table.Column<long>(type: "INTEGER", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_print_jobs", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_print_jobs_OrderId",
                table: "print_jobs",
                column: "OrderId");

            migrationBuilder.CreateIndex(
                name: "IX_print_jobs_Printer_Status",
                table: "print_jobs",
                columns: new[] { "Printer", "Status" });
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "print_jobs");
        }
    }
}
