using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace ClubCycle.Data.Migrations
{
    /// <inheritdoc />
    public partial class CreateClubAndAccountTables : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.EnsureSchema(
                name: "club");

            migrationBuilder.EnsureSchema(
                name: "accounts");

            migrationBuilder.CreateTable(
                name: "clubs",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    time_zone = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    first_weekday = table.Column<int>(type: "integer", nullable: false),
                    created_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_clubs", x => x.club_id);
                    table.CheckConstraint("ck_clubs_first_weekday", "first_weekday between 1 and 7");
                });

            migrationBuilder.CreateTable(
                name: "data_protection_keys",
                schema: "accounts",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    friendly_name = table.Column<string>(type: "text", nullable: true),
                    xml = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_data_protection_keys", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "audit",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    by = table.Column<Guid>(type: "uuid", nullable: true),
                    what = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: true),
                    details = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_audit", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_audit_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "users",
                schema: "accounts",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    display_name = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    role = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    user_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_user_name = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    normalized_email = table.Column<string>(type: "character varying(256)", maxLength: 256, nullable: true),
                    email_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    password_hash = table.Column<string>(type: "text", nullable: true),
                    security_stamp = table.Column<string>(type: "text", nullable: true),
                    concurrency_stamp = table.Column<string>(type: "text", nullable: true),
                    phone_number = table.Column<string>(type: "text", nullable: true),
                    phone_number_confirmed = table.Column<bool>(type: "boolean", nullable: false),
                    two_factor_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    lockout_end = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: true),
                    lockout_enabled = table.Column<bool>(type: "boolean", nullable: false),
                    access_failed_count = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_users", x => x.id);
                    table.UniqueConstraint("ak_users_club_id_id", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_users_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "user_claims",
                schema: "accounts",
                columns: table => new
                {
                    id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    claim_type = table.Column<string>(type: "text", nullable: true),
                    claim_value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_user_claims", x => x.id);
                    table.ForeignKey(
                        name: "fk_user_claims_users_user_id",
                        column: x => x.user_id,
                        principalSchema: "accounts",
                        principalTable: "users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "user_logins",
                schema: "accounts",
                columns: table => new
                {
                    login_provider = table.Column<string>(type: "text", nullable: false),
                    provider_key = table.Column<string>(type: "text", nullable: false),
                    provider_display_name = table.Column<string>(type: "text", nullable: true),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_user_logins", x => new { x.login_provider, x.provider_key });
                    table.ForeignKey(
                        name: "fk_user_logins_users_user_id",
                        column: x => x.user_id,
                        principalSchema: "accounts",
                        principalTable: "users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "user_tokens",
                schema: "accounts",
                columns: table => new
                {
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    login_provider = table.Column<string>(type: "text", nullable: false),
                    name = table.Column<string>(type: "text", nullable: false),
                    value = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_user_tokens", x => new { x.user_id, x.login_provider, x.name });
                    table.ForeignKey(
                        name: "fk_user_tokens_users_user_id",
                        column: x => x.user_id,
                        principalSchema: "accounts",
                        principalTable: "users",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "accepted_findings",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: false),
                    rule = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    week = table.Column<LocalDate>(type: "date", nullable: true),
                    reason = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false),
                    accepted_by = table.Column<Guid>(type: "uuid", nullable: true),
                    accepted_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_accepted_findings", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_accepted_findings_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "closed_days",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: true),
                    days = table.Column<DateInterval>(type: "daterange", nullable: false),
                    why = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_closed_days", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_closed_days_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "feed_bodies",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: false),
                    variant = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    etag = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    gzip = table.Column<byte[]>(type: "bytea", nullable: false),
                    brotli = table.Column<byte[]>(type: "bytea", nullable: false),
                    length = table.Column<int>(type: "integer", nullable: false),
                    last_modified = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_feed_bodies", x => new { x.club_id, x.squad_id, x.variant });
                    table.ForeignKey(
                        name: "fk_feed_bodies_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "fixtures",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: false),
                    date = table.Column<LocalDate>(type: "date", nullable: false),
                    start = table.Column<LocalTime>(type: "time", nullable: true),
                    opponent = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: true),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_fixtures", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_fixtures_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "links",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    player_id = table.Column<Guid>(type: "uuid", nullable: false),
                    token_hash = table.Column<byte[]>(type: "bytea", nullable: false),
                    name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    created_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    revoked_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true),
                    last_poll_day = table.Column<LocalDate>(type: "date", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_links", x => new { x.club_id, x.id });
                    table.CheckConstraint("ck_links_token_hash", "octet_length(token_hash) = 32");
                    table.ForeignKey(
                        name: "fk_links_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "outbox",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    kind = table.Column<string>(type: "character varying(40)", maxLength: 40, nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: false),
                    created_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    not_before = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    attempts = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_outbox", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_outbox_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "pins",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: false),
                    week_first = table.Column<LocalDate>(type: "date", nullable: false),
                    slot = table.Column<string>(type: "character varying(120)", maxLength: 120, nullable: false),
                    date = table.Column<LocalDate>(type: "date", nullable: true),
                    start = table.Column<LocalTime>(type: "time", nullable: true),
                    skipped = table.Column<bool>(type: "boolean", nullable: false),
                    decided_by = table.Column<Guid>(type: "uuid", nullable: true),
                    decided_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_pins", x => new { x.club_id, x.squad_id, x.week_first, x.slot });
                    table.ForeignKey(
                        name: "fk_pins_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "players",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_players", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_players_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "revisions",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    command_id = table.Column<Guid>(type: "uuid", nullable: false),
                    plan = table.Column<string>(type: "text", nullable: false),
                    published_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    published_by = table.Column<Guid>(type: "uuid", nullable: true),
                    note = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_revisions", x => new { x.club_id, x.squad_id, x.number });
                    table.ForeignKey(
                        name: "fk_revisions_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "seasons",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: true),
                    previous_last_day = table.Column<LocalDate>(type: "date", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_seasons", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_seasons_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "stints",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    season_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    days = table.Column<DateInterval>(type: "daterange", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_stints", x => new { x.club_id, x.season_id, x.number });
                    table.ForeignKey(
                        name: "fk_stints_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_stints_seasons_club_id_season_id",
                        columns: x => new { x.club_id, x.season_id },
                        principalSchema: "club",
                        principalTable: "seasons",
                        principalColumns: new[] { "club_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "sessions",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: false),
                    uid = table.Column<Guid>(type: "uuid", nullable: false),
                    date = table.Column<LocalDate>(type: "date", nullable: false),
                    start = table.Column<LocalTime>(type: "time", nullable: false),
                    minutes = table.Column<int>(type: "integer", nullable: false),
                    title = table.Column<string>(type: "character varying(300)", maxLength: 300, nullable: false),
                    kind = table.Column<string>(type: "character varying(20)", maxLength: 20, nullable: false),
                    sequence = table.Column<int>(type: "integer", nullable: false),
                    changed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    cancelled_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_sessions", x => new { x.club_id, x.squad_id, x.uid });
                    table.CheckConstraint("ck_sessions_minutes", "minutes between 1 and 1440");
                    table.ForeignKey(
                        name: "fk_sessions_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "squad_coaches",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    squad_id = table.Column<Guid>(type: "uuid", nullable: false),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_squad_coaches", x => new { x.club_id, x.squad_id, x.user_id });
                    table.ForeignKey(
                        name: "fk_squad_coaches_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_squad_coaches_users_club_id_user_id",
                        columns: x => new { x.club_id, x.user_id },
                        principalSchema: "accounts",
                        principalTable: "users",
                        principalColumns: new[] { "club_id", "id" },
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "squads",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    age_group = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    training_age = table.Column<string>(type: "character varying(10)", maxLength: 10, nullable: false),
                    practices = table.Column<string>(type: "jsonb", nullable: false),
                    windows = table.Column<string>(type: "jsonb", nullable: false),
                    match_day = table.Column<int>(type: "integer", nullable: false),
                    match_start = table.Column<LocalTime>(type: "time", nullable: true),
                    template_id = table.Column<Guid>(type: "uuid", nullable: false),
                    template_version = table.Column<int>(type: "integer", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_squads", x => new { x.club_id, x.id });
                    table.CheckConstraint("ck_squads_match_day", "match_day between 1 and 7");
                    table.ForeignKey(
                        name: "fk_squads_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "template_versions",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    template_id = table.Column<Guid>(type: "uuid", nullable: false),
                    number = table.Column<int>(type: "integer", nullable: false),
                    body = table.Column<string>(type: "text", nullable: false),
                    saved_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    saved_by = table.Column<Guid>(type: "uuid", nullable: true),
                    note = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_template_versions", x => new { x.club_id, x.template_id, x.number });
                    table.ForeignKey(
                        name: "fk_template_versions_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "templates",
                schema: "club",
                columns: table => new
                {
                    club_id = table.Column<Guid>(type: "uuid", nullable: false),
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    name = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    title = table.Column<string>(type: "character varying(100)", maxLength: 100, nullable: false),
                    built_in = table.Column<bool>(type: "boolean", nullable: false),
                    parent_id = table.Column<Guid>(type: "uuid", nullable: true),
                    parent_version = table.Column<int>(type: "integer", nullable: true),
                    latest_version = table.Column<int>(type: "integer", nullable: false),
                    version = table.Column<int>(type: "integer", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_templates", x => new { x.club_id, x.id });
                    table.ForeignKey(
                        name: "fk_templates_clubs_club_id",
                        column: x => x.club_id,
                        principalSchema: "club",
                        principalTable: "clubs",
                        principalColumn: "club_id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_templates_template_versions_club_id_parent_id_parent_version",
                        columns: x => new { x.club_id, x.parent_id, x.parent_version },
                        principalSchema: "club",
                        principalTable: "template_versions",
                        principalColumns: new[] { "club_id", "template_id", "number" });
                });

            migrationBuilder.CreateIndex(
                name: "ix_accepted_findings_club_id_squad_id_rule_week",
                schema: "club",
                table: "accepted_findings",
                columns: new[] { "club_id", "squad_id", "rule", "week" },
                unique: true)
                .Annotation("Npgsql:NullsDistinct", false);

            migrationBuilder.CreateIndex(
                name: "ix_audit_club_id_at",
                schema: "club",
                table: "audit",
                columns: new[] { "club_id", "at" });

            migrationBuilder.CreateIndex(
                name: "ix_closed_days_club_id_squad_id",
                schema: "club",
                table: "closed_days",
                columns: new[] { "club_id", "squad_id" });

            migrationBuilder.CreateIndex(
                name: "ix_fixtures_club_id_squad_id_date",
                schema: "club",
                table: "fixtures",
                columns: new[] { "club_id", "squad_id", "date" });

            migrationBuilder.CreateIndex(
                name: "ix_links_club_id_player_id",
                schema: "club",
                table: "links",
                columns: new[] { "club_id", "player_id" });

            migrationBuilder.CreateIndex(
                name: "ix_links_club_id_token_hash",
                schema: "club",
                table: "links",
                columns: new[] { "club_id", "token_hash" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_links_token_hash",
                schema: "club",
                table: "links",
                column: "token_hash");

            migrationBuilder.CreateIndex(
                name: "ix_outbox_club_id_squad_id",
                schema: "club",
                table: "outbox",
                columns: new[] { "club_id", "squad_id" });

            migrationBuilder.CreateIndex(
                name: "ix_outbox_not_before",
                schema: "club",
                table: "outbox",
                column: "not_before");

            migrationBuilder.CreateIndex(
                name: "ix_players_club_id_squad_id",
                schema: "club",
                table: "players",
                columns: new[] { "club_id", "squad_id" });

            migrationBuilder.CreateIndex(
                name: "ix_revisions_club_id_squad_id_command_id",
                schema: "club",
                table: "revisions",
                columns: new[] { "club_id", "squad_id", "command_id" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_seasons_club_id_squad_id",
                schema: "club",
                table: "seasons",
                columns: new[] { "club_id", "squad_id" });

            migrationBuilder.CreateIndex(
                name: "ix_sessions_club_id_squad_id_date",
                schema: "club",
                table: "sessions",
                columns: new[] { "club_id", "squad_id", "date" });

            migrationBuilder.CreateIndex(
                name: "ix_squad_coaches_club_id_user_id",
                schema: "club",
                table: "squad_coaches",
                columns: new[] { "club_id", "user_id" });

            migrationBuilder.CreateIndex(
                name: "ix_squads_club_id_template_id_template_version",
                schema: "club",
                table: "squads",
                columns: new[] { "club_id", "template_id", "template_version" });

            migrationBuilder.CreateIndex(
                name: "ix_templates_club_id_name",
                schema: "club",
                table: "templates",
                columns: new[] { "club_id", "name" },
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_templates_club_id_parent_id_parent_version",
                schema: "club",
                table: "templates",
                columns: new[] { "club_id", "parent_id", "parent_version" });

            migrationBuilder.CreateIndex(
                name: "ix_user_claims_user_id",
                schema: "accounts",
                table: "user_claims",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "ix_user_logins_user_id",
                schema: "accounts",
                table: "user_logins",
                column: "user_id");

            migrationBuilder.CreateIndex(
                name: "EmailIndex",
                schema: "accounts",
                table: "users",
                column: "normalized_email");

            migrationBuilder.CreateIndex(
                name: "UserNameIndex",
                schema: "accounts",
                table: "users",
                column: "normalized_user_name",
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "fk_accepted_findings_squads_club_id_squad_id",
                schema: "club",
                table: "accepted_findings",
                columns: new[] { "club_id", "squad_id" },
                principalSchema: "club",
                principalTable: "squads",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_closed_days_squads_club_id_squad_id",
                schema: "club",
                table: "closed_days",
                columns: new[] { "club_id", "squad_id" },
                principalSchema: "club",
                principalTable: "squads",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_feed_bodies_squads_club_id_squad_id",
                schema: "club",
                table: "feed_bodies",
                columns: new[] { "club_id", "squad_id" },
                principalSchema: "club",
                principalTable: "squads",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_fixtures_squads_club_id_squad_id",
                schema: "club",
                table: "fixtures",
                columns: new[] { "club_id", "squad_id" },
                principalSchema: "club",
                principalTable: "squads",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_links_players_club_id_player_id",
                schema: "club",
                table: "links",
                columns: new[] { "club_id", "player_id" },
                principalSchema: "club",
                principalTable: "players",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_outbox_squads_club_id_squad_id",
                schema: "club",
                table: "outbox",
                columns: new[] { "club_id", "squad_id" },
                principalSchema: "club",
                principalTable: "squads",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_pins_squads_club_id_squad_id",
                schema: "club",
                table: "pins",
                columns: new[] { "club_id", "squad_id" },
                principalSchema: "club",
                principalTable: "squads",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_players_squads_club_id_squad_id",
                schema: "club",
                table: "players",
                columns: new[] { "club_id", "squad_id" },
                principalSchema: "club",
                principalTable: "squads",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_revisions_squads_club_id_squad_id",
                schema: "club",
                table: "revisions",
                columns: new[] { "club_id", "squad_id" },
                principalSchema: "club",
                principalTable: "squads",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_seasons_squads_club_id_squad_id",
                schema: "club",
                table: "seasons",
                columns: new[] { "club_id", "squad_id" },
                principalSchema: "club",
                principalTable: "squads",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_sessions_squads_club_id_squad_id",
                schema: "club",
                table: "sessions",
                columns: new[] { "club_id", "squad_id" },
                principalSchema: "club",
                principalTable: "squads",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_squad_coaches_squads_club_id_squad_id",
                schema: "club",
                table: "squad_coaches",
                columns: new[] { "club_id", "squad_id" },
                principalSchema: "club",
                principalTable: "squads",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            migrationBuilder.AddForeignKey(
                name: "fk_squads_template_versions_club_id_template_id_template_versi",
                schema: "club",
                table: "squads",
                columns: new[] { "club_id", "template_id", "template_version" },
                principalSchema: "club",
                principalTable: "template_versions",
                principalColumns: new[] { "club_id", "template_id", "number" });

            migrationBuilder.AddForeignKey(
                name: "fk_template_versions_templates_club_id_template_id",
                schema: "club",
                table: "template_versions",
                columns: new[] { "club_id", "template_id" },
                principalSchema: "club",
                principalTable: "templates",
                principalColumns: new[] { "club_id", "id" },
                onDelete: ReferentialAction.Cascade);

            // No two stints of a season share a day; what the model cannot say is said here.
            migrationBuilder.Sql("create extension if not exists btree_gist");
            migrationBuilder.Sql(
                """
                alter table club.stints add constraint ex_stints_days
                exclude using gist (club_id with =, season_id with =, days with &&)
                """);
            migrationBuilder.ProtectClubTables();
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_template_versions_clubs_club_id",
                schema: "club",
                table: "template_versions");

            migrationBuilder.DropForeignKey(
                name: "fk_templates_clubs_club_id",
                schema: "club",
                table: "templates");

            migrationBuilder.DropForeignKey(
                name: "fk_templates_template_versions_club_id_parent_id_parent_version",
                schema: "club",
                table: "templates");

            migrationBuilder.DropTable(
                name: "accepted_findings",
                schema: "club");

            migrationBuilder.DropTable(
                name: "audit",
                schema: "club");

            migrationBuilder.DropTable(
                name: "closed_days",
                schema: "club");

            migrationBuilder.DropTable(
                name: "data_protection_keys",
                schema: "accounts");

            migrationBuilder.DropTable(
                name: "feed_bodies",
                schema: "club");

            migrationBuilder.DropTable(
                name: "fixtures",
                schema: "club");

            migrationBuilder.DropTable(
                name: "links",
                schema: "club");

            migrationBuilder.DropTable(
                name: "outbox",
                schema: "club");

            migrationBuilder.DropTable(
                name: "pins",
                schema: "club");

            migrationBuilder.DropTable(
                name: "revisions",
                schema: "club");

            migrationBuilder.DropTable(
                name: "sessions",
                schema: "club");

            migrationBuilder.DropTable(
                name: "squad_coaches",
                schema: "club");

            migrationBuilder.DropTable(
                name: "stints",
                schema: "club");

            migrationBuilder.DropTable(
                name: "user_claims",
                schema: "accounts");

            migrationBuilder.DropTable(
                name: "user_logins",
                schema: "accounts");

            migrationBuilder.DropTable(
                name: "user_tokens",
                schema: "accounts");

            migrationBuilder.DropTable(
                name: "players",
                schema: "club");

            migrationBuilder.DropTable(
                name: "seasons",
                schema: "club");

            migrationBuilder.DropTable(
                name: "users",
                schema: "accounts");

            migrationBuilder.DropTable(
                name: "squads",
                schema: "club");

            migrationBuilder.DropTable(
                name: "clubs",
                schema: "club");

            migrationBuilder.DropTable(
                name: "template_versions",
                schema: "club");

            migrationBuilder.DropTable(
                name: "templates",
                schema: "club");
        }
    }
}
