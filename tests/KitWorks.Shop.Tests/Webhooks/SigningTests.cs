using System.Text;
using KitWorks.Shop.Webhooks;

namespace KitWorks.Shop.Tests.Webhooks;

public sealed class SigningTests
{
    /// <summary>RFC 9421, appendix B.2.5, with the key of appendix B.1.5.</summary>
    [Fact]
    public void Sign_WhenItIsTheExampleOfTheStandard_SignsAsThatDoes()
    {
        var key = Convert.FromBase64String("uzvJfB4u3N0Jy4T7NZ75MDVcr8zSTInedJtkgcu46YW4XByzNJjxBdtjUkdJPBtbmHhIDi6pcl8jsasjlTMtDQ==");

        var (input, signature) = Signing.Sign(
            "sig-b25", [("date", "Tue, 20 Apr 2021 02:07:55 GMT"), ("@authority", "example.com"), ("content-type", "application/json")],
            DateTimeOffset.FromUnixTimeSeconds(1618884473), "test-shared-secret", key);

        Assert.Equal("sig-b25=(\"date\" \"@authority\" \"content-type\");created=1618884473;keyid=\"test-shared-secret\"", input);
        Assert.Equal("sig-b25=:pxcQw6G3AjtMBQjwo8XzkZf/bws5LelbaMk5rGIGtE8=:", signature);
    }

    /// <summary>RFC 9530, appendix D: the body <c>{"hello": "world"}</c> and a line feed.</summary>
    [Fact]
    public void Digest_WhenItIsTheExampleOfTheStandard_IsTheSame() =>
        Assert.Equal("sha-256=:RK/0qy18MlBSVnWgjwz6lZEWjP/lF5HF9bvEF8FabDg=:", Signing.Digest(Encoding.UTF8.GetBytes("{\"hello\": \"world\"}\n")));
}
