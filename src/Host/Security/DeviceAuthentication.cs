using System.Security.Claims;
using System.Text.Encodings.Web;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authorization;
using Microsoft.Extensions.Options;
using SecondShore.Host.Api;
using SecondShore.Store;

namespace SecondShore.Host.Security;

/// <summary>Who asks: this machine itself where no pairing is asked for, else the device whose token comes with the request.</summary>
internal sealed class DeviceAuthentication(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory loggers, UrlEncoder encoder,
    HostSettings settings, DeviceStore devices, StartKey key) : AuthenticationHandler<AuthenticationSchemeOptions>(options, loggers, encoder)
{
    public static readonly string Scheme_ = "Device";

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (!settings.Pairing) return LocalCaller.Is(Context) && key.IsIn(Request) ? Known("local", "this machine", owner: true, maker: true) : AuthenticateResult.Fail("not local");
        string header = Request.Headers.Authorization.ToString();
        if (!header.StartsWith("Bearer ss1_", StringComparison.Ordinal) || header.Length > 100) return AuthenticateResult.NoResult();
        DeviceRow? device = await devices.FindAsync(header["Bearer ".Length..], Context.RequestAborted).ConfigureAwait(false);
        return device is null ? AuthenticateResult.Fail("unknown token") : Known(device.Id, device.Name, device.Owner != 0, device.MayMake != 0);
    }

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = "Bearer";
        return Replies.Refuse(Context, StatusCodes.Status401Unauthorized, settings.Pairing
            ? "This device is not paired with the host, or its token was revoked. Ask for a code at the host ('pair') and pair again."
            : "This host answers browsers that opened the address it printed, and programs of its own account that send what its host.key holds (docs/how-to/host.md). Start it with pairing to reach it from elsewhere.");
    }

    protected override Task HandleForbiddenAsync(AuthenticationProperties properties) =>
        Replies.Refuse(Context, StatusCodes.Status403Forbidden, "This device may not do that here. A device of the owner can.");

    private static AuthenticateResult Known(string id, string name, bool owner, bool maker)
    {
        ClaimsIdentity identity = new([new Claim(ClaimTypes.NameIdentifier, id), new Claim(ClaimTypes.Name, name)], Scheme_);
        if (owner) identity.AddClaim(new Claim(ClaimTypes.Role, Roles.Owner));
        if (maker) identity.AddClaim(new Claim(ClaimTypes.Role, Roles.Maker));
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), Scheme_));
    }
}

/// <summary>Roles of devices.</summary>
internal static class Roles
{
    /// <summary>Sees every lake and manages devices.</summary>
    public static readonly string Owner = "owner";

    /// <summary>Adds lakes of its own.</summary>
    public static readonly string Maker = "maker";
}

/// <summary>Devices as a service, and what the rest asks of them.</summary>
internal static class Devices
{
    public static readonly string OwnerPolicy = "owner";

    public static void AddDevices(this IServiceCollection services)
    {
        services.AddAuthentication(DeviceAuthentication.Scheme_).AddScheme<AuthenticationSchemeOptions, DeviceAuthentication>(DeviceAuthentication.Scheme_, null);
        services.AddAuthorizationBuilder()
            .AddPolicy(OwnerPolicy, policy => policy.RequireRole(Roles.Owner))
            .SetDefaultPolicy(new AuthorizationPolicyBuilder(DeviceAuthentication.Scheme_).RequireAuthenticatedUser().Build());
    }

    /// <summary>Id of the device that asks.</summary>
    public static string Device(this HttpContext context) => context.User.FindFirstValue(ClaimTypes.NameIdentifier) ?? "";

    /// <summary>Whether the device is the owner's.</summary>
    public static bool IsOwner(this HttpContext context) => context.User.IsInRole(Roles.Owner);

    /// <summary>Whether the device adds lakes of its own.</summary>
    public static bool IsMaker(this HttpContext context) => context.User.IsInRole(Roles.Maker);

    /// <summary>The device, as far as room is concerned.</summary>
    public static Writer Writer(this HttpContext context) => new(context.Device(), context.IsOwner());

    /// <summary>Address of the caller, for the audit.</summary>
    public static string Remote(this HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "";
}
