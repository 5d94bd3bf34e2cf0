using System.Diagnostics;
using ClubCycle.Data.Backups;
using ClubCycle.Data.Telemetry;
using OpenTelemetry;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace ClubCycle.Web.Hosting;

/// <summary>Traces and metrics over OTLP, for whoever names a collector with OTEL_EXPORTER_OTLP_ENDPOINT. Without one nothing is collected and nothing leaves.</summary>
internal static class Telemetry
{
    public const string Endpoint = "OTEL_EXPORTER_OTLP_ENDPOINT";

    private static readonly string[] Meters = [ClubMeter.Name, "Microsoft.AspNetCore.*", "Npgsql", "System.Runtime"];

    public static void AddTelemetry(this WebApplicationBuilder builder)
    {
        if (string.IsNullOrWhiteSpace(builder.Configuration[Endpoint]))
        {
            return;
        }

        builder.Services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService("clubcycle", serviceVersion: BackupManifest.AppVersion).AddEnvironmentVariableDetector())
            .WithTracing(traces => traces.AddAspNetCoreInstrumentation().AddSource("Npgsql").AddProcessor<WithoutSecrets>().AddOtlpExporter())
            .WithMetrics(metrics => metrics.AddMeter(Meters).AddOtlpExporter());
    }

    /// <summary>Masks what a span says before it leaves. What cannot be changed any more does not leave at all.</summary>
    private sealed class WithoutSecrets : BaseProcessor<Activity>
    {
        public override void OnEnd(Activity data)
        {
            data.DisplayName = SecretAddresses.Masked(data.DisplayName);
            foreach (var (name, value) in data.TagObjects.ToList())
            {
                if (value is not null && value.ToString() is { } text && SecretAddresses.Masked(text) is var masked && masked != text)
                {
                    data.SetTag(name, masked);
                }
            }

            if (data.StatusDescription is { } status)
            {
                data.SetStatus(data.Status, SecretAddresses.Masked(status));
            }

            if (data.Events.SelectMany(e => e.Tags).Any(tag => IsSecret(tag.Value)) || data.Links.SelectMany(link => link.Tags ?? []).Any(tag => IsSecret(tag.Value)) || IsSecret(data.TraceStateString))
            {
                data.ActivityTraceFlags &= ~ActivityTraceFlags.Recorded;
            }
        }

        private static bool IsSecret(object? value) => value?.ToString() is { } text && SecretAddresses.Masked(text) != text;
    }
}
