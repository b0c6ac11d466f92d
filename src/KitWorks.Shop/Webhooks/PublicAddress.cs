using System.Net;

namespace KitWorks.Shop.Webhooks;

/// <summary>Which addresses lie in the public Internet, by IANA's registries of special-purpose IPv4 and IPv6 addresses.</summary>
static class PublicAddress
{
    static readonly IPNetwork[] Special =
    [
        .. new[]
        {
            "0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12", "192.0.0.0/24", "192.0.2.0/24",
            "192.88.99.0/24", "192.168.0.0/16", "198.18.0.0/15", "198.51.100.0/24", "203.0.113.0/24", "224.0.0.0/4", "240.0.0.0/4",
            // Of IPv6 only 2000::/3 is in use; in it: IETF's, documentation, 6to4, which wraps an IPv4 address, and more documentation.
            "2001::/23", "2001:db8::/32", "2002::/16", "3fff::/20",
        }.Select(IPNetwork.Parse),
    ];

    static readonly IPNetwork GlobalUnicast = IPNetwork.Parse("2000::/3");

    public static bool Is(IPAddress address)
    {
        var plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        if (plain.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6 && !GlobalUnicast.Contains(plain)) return false;
        return !Special.Any(network => network.Contains(plain));
    }
}
